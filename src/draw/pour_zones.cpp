// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle number_style{6, Anchor::middle, true, 0, true};
constexpr TextStyle small{2.4, Anchor::middle, false, 0, true};

PaperBox zones_room(const PaperBox& room) {
  return {room.x + 12, room.y + 12, room.width - 24, room.height - 24};
}

PaperBox extent(const std::vector<PaperPoint>& spots) {
  PaperPoint least = spots.front(), most = spots.front();
  for (const PaperPoint& spot : spots) {
    least = {std::min(least.x, spot.x), std::min(least.y, spot.y)};
    most = {std::max(most.x, spot.x), std::max(most.y, spot.y)};
  }
  return {least.x, least.y, most.x - least.x, most.y - least.y};
}

/// True where the spot lies inside the ring: crossings of a ray (even-odd).
bool inside(const std::vector<PaperPoint>& ring, const PaperPoint& spot) {
  bool in = false;
  for (std::size_t i = 0, k = ring.size() - 1; i < ring.size(); k = i++) {
    const PaperPoint &a = ring[i], &b = ring[k];
    if ((a.y > spot.y) == (b.y > spot.y)) continue;
    if (spot.x < (b.x - a.x) * (spot.y - a.y) / (b.y - a.y) + a.x) in = !in;
  }
  return in;
}

/// Places where the text lies inside the zone, its middle first.
std::vector<PaperPoint> places_in(const std::vector<PaperPoint>& ring, const std::string& text,
                                  const TextStyle& style, double down) {
  const PaperBox box = extent(ring);
  std::vector<PaperPoint> places;
  for (const double y : {0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9}) {
    for (const double x : {0.5, 0.35, 0.65, 0.2, 0.8}) {
      const PaperPoint spot{box.x + box.width * x, box.y + box.height * y + down};
      const Quad quad = text_quad(spot, text, style);
      if (std::all_of(quad.begin(), quad.end(),
                      [&](const PaperPoint& corner) { return inside(ring, corner); })) {
        places.push_back(spot);
      }
    }
  }
  return places;
}

/// One slab, one lift.
struct Page {
  const Plan& plan;
  const SlabPlan& slab;
  int lift;
  Paper& paper;
  View view;
  Labels labels;
};

void zones(Page& page) {
  for (const Batch& batch : page.plan.batches) {
    for (const Zone& zone : batch.zones) {
      if (zone.slab != page.slab.name || zone.lift != page.lift) continue;
      const std::vector<PaperPoint> ring = page.view(zone.outline);
      page.paper.svg.begin_group(fmt::format("zone {}", batch.number));
      page.paper.svg.polygon(ring, batch.number % 2 == 0 ? Fill::pale : Fill::paper, Pen{0});
      page.paper.svg.end_group();
    }
  }
  page.labels.keep_clear(page.view(page.slab.outline));
  for (const OpeningPlan& opening : page.slab.openings) {
    const std::vector<PaperPoint> ring = page.view(chords(opening.edge, drawn_within));
    page.paper.svg.polygon(ring, Fill::waste, usual_pen);
    page.labels.keep_clear(extent(ring));
  }
}

/// The number of a batch in each of its parts where it fits, its times in the largest. Returns
/// whether the batch is named at all.
bool name(Page& page, const Batch& batch) {
  std::vector<std::vector<PaperPoint>> rings;
  for (const Zone& zone : batch.zones) {
    if (zone.slab == page.slab.name && zone.lift == page.lift) {
      rings.push_back(page.view(zone.outline));
    }
  }
  const auto size = [](const std::vector<PaperPoint>& ring) {
    const PaperBox box = extent(ring);
    return box.width * box.height;
  };
  std::stable_sort(rings.begin(), rings.end(),
                   [&](const auto& a, const auto& b) { return size(a) > size(b); });
  bool named = rings.empty();
  for (const std::vector<PaperPoint>& ring : rings) {
    TextStyle style = number_style;
    bool here = false;
    for (const double letters : {6.0, 4.5, 3.2, 2.4}) {
      style.size = letters;
      const std::string words = std::to_string(batch.number);
      here =
          page.labels.put(page.paper.svg, words, style, places_in(ring, words, style, letters / 3));
      if (here) break;
    }
    named = named || here;
    if (!here || &ring != &rings.front()) continue;
    for (const std::string& words :
         {"water " + show_clock(batch.contact), "placed " + show_clock(batch.place_end)}) {
      (void)page.labels.put(page.paper.svg, words, small,
                            places_in(ring, words, small, style.size));
    }
  }
  return named;
}

void numbers(Page& page) {
  std::vector<std::string> without;
  for (const Batch& batch : page.plan.batches) {
    if (!name(page, batch)) without.push_back(std::to_string(batch.number));
  }
  if (without.empty()) return;
  page.paper.note(without.size() > 8
                      ? fmt::format("No room for the numbers of {} batches: they follow each "
                                    "other along the arrow.",
                                    without.size())
                      : fmt::format("No room for the number of batch {}.", joined(without, ", ")));
}

/// Which way the pour goes, beside the slab: from the first batch's middle to the last one's.
void sweep_arrow(Page& page) {
  std::vector<PaperBox> all;
  for (const Batch& batch : page.plan.batches) {
    for (const Zone& zone : batch.zones) {
      if (zone.slab == page.slab.name && zone.lift == page.lift) {
        all.push_back(extent(page.view(zone.outline)));
      }
    }
  }
  // Round a corner the way bends: there the numbers show it, and the note says from where to where.
  if (all.empty() || page.slab.sharp.size() != 4) return;
  const PaperBox slab = extent(page.view(page.slab.outline));
  const auto middle = [](const PaperBox& box) {
    return PaperPoint{box.x + box.width / 2, box.y + box.height / 2};
  };
  const PaperPoint first = middle(all.front()), last = middle(all.back());
  const bool across = std::abs(last.x - first.x) > std::abs(last.y - first.y);
  const PaperPoint from =
      across ? PaperPoint{first.x, slab.bottom() + 7} : PaperPoint{slab.x - 7, first.y};
  const PaperPoint to = across ? PaperPoint{last.x, from.y} : PaperPoint{from.x, last.y};
  if (std::hypot(to.x - from.x, to.y - from.y) < 5) return;
  page.paper.svg.begin_group("sweep");
  page.paper.svg.line(from, to, outline_pen);
  page.paper.svg.arrow(from, to);
  page.paper.svg.end_group();
  page.labels.keep_clear({from, to});
  TextStyle style = spot_word;
  style.turn = across ? 0 : -90;
  (void)page.labels.put(page.paper.svg, "pour this way", style,
                        {across ? PaperPoint{(from.x + to.x) / 2, from.y + 4}
                                : PaperPoint{from.x - 2, (from.y + to.y) / 2}});
}

/// Joints of this lift; one between lifts has no line.
std::vector<const Joint*> joints(const Page& page) {
  const auto lies_here = [&](int number) {
    const auto& batch = page.plan.batches[static_cast<std::size_t>(number - 1)];
    return std::any_of(batch.zones.begin(), batch.zones.end(), [&](const Zone& zone) {
      return zone.slab == page.slab.name && zone.lift == page.lift;
    });
  };
  std::vector<const Joint*> here;
  for (const Joint& joint : page.plan.pour.joints) {
    if (joint.slab == page.slab.name && joint.line.size() > 1 && lies_here(joint.first) &&
        lies_here(joint.second)) {
      here.push_back(&joint);
    }
  }
  return here;
}

void joint_lines(Page& page, const std::vector<const Joint*>& here) {
  for (const Joint* joint : here) {
    const std::vector<PaperPoint> line = page.view(joint->line);
    page.paper.svg.begin_group(fmt::format("joint {} {}", joint->first, joint->second));
    page.paper.svg.polyline(line, wet_edge_pen);
    page.paper.svg.end_group();
    page.labels.keep_clear(line);
  }
}

/// How long each fresh edge waits, along it where there is room.
void joint_waits(Page& page, const std::vector<const Joint*>& here) {
  for (const Joint* joint : here) {
    const std::vector<PaperPoint> line = page.view(joint->line);
    const PaperBox box = extent(line);
    if (std::min(box.height, box.width) > 0.1 * std::max(box.height, box.width)) continue;
    TextStyle style = small;
    style.turn = box.height > box.width ? -90 : 0;
    std::vector<PaperPoint> places;
    for (const double share : {0.25, 0.75, 0.4, 0.6, 0.5}) {
      const PaperPoint along{line.front().x + (line.back().x - line.front().x) * share,
                             line.front().y + (line.back().y - line.front().y) * share};
      if (style.turn != 0) {
        places.push_back({along.x - 1.1, along.y});
        places.push_back({along.x + 3, along.y});
      } else {
        places.push_back({along.x, along.y - 1.1});
        places.push_back({along.x, along.y + 3});
      }
    }
    (void)page.labels.put(page.paper.svg, "waits " + show(joint->wait), style, places);
  }
}

std::string sweep_words(const Plan& plan, const SlabPlan& slab) {
  for (const Sweep& sweep : plan.pour.sweeps) {
    if (sweep.slab == slab.name) {
      return fmt::format("Pour from {} towards {}. ", sweep.from, sweep.towards);
    }
  }
  return "";
}

Drawing zones_of(const Plan& plan, std::size_t index, int lift, int lifts) {
  const SlabPlan& slab = plan.slabs[index];
  const std::string name = lifts == 1 ? fmt::format("slab-{}-pour", index + 1)
                                      : fmt::format("slab-{}-pour-lift-{}", index + 1, lift);
  const std::string title = title_of(
      slab, lifts == 1
                ? "which batch goes where"
                : fmt::format("which batch goes where, lift {} of {}, from below", lift, lifts));
  Paper paper(name, title, plan.name, plan.units,
              "Zones of the batches in their order, with the minutes from the first water");
  const View view = view_of(bounding_box(slab.outline), zones_room(paper.room()), plan.units);
  Page page{plan, slab, lift, paper, view, Labels(paper.room())};
  paper.note(sweep_words(plan, slab) +
             "Times are h:min from the first water of batch 1: start a stopwatch then.");
  zones(page);
  const std::vector<const Joint*> here = joints(page);
  joint_lines(page, here);
  paper.svg.polygon(view(slab.outline), Fill::none, outline_pen);
  numbers(page);
  joint_waits(page, here);
  sweep_arrow(page);
  paper.scale_bar(view.scale);
  paper.legend(Fill::pale, usual_pen, "zones, grey and white in turn");
  if (!here.empty()) paper.legend(Fill::none, wet_edge_pen, "fresh edge to be met in time");
  if (!slab.openings.empty()) paper.legend(Fill::waste, usual_pen, "opening");
  return {name, title, paper.svg.str()};
}

}  // namespace

std::vector<Drawing> pour_zones(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
    if (!has_shape(plan.slabs[i])) continue;
    int lifts = 1;
    for (const Sweep& sweep : plan.pour.sweeps) {
      if (sweep.slab == plan.slabs[i].name) lifts = sweep.lifts;
    }
    for (int lift = 1; lift <= lifts; ++lift) {
      drawings.push_back(zones_of(plan, i, lift, lifts));
    }
  }
  return drawings;
}

}  // namespace strikeoff::draw
