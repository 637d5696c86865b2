// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle number_style{6, Anchor::middle, true, 0, true};
constexpr TextStyle word{2.8, Anchor::middle, false, 0, true};
constexpr TextStyle small{2.4, Anchor::middle, false, 0, true};

Box inner(const Box& room) {
  return {room.x + 12, room.y + 12, room.width - 24, room.height - 24};
}

Box extent(const std::vector<Spot>& spots) {
  Spot least = spots.front(), most = spots.front();
  for (const Spot& spot : spots) {
    least = {std::min(least.x, spot.x), std::min(least.y, spot.y)};
    most = {std::max(most.x, spot.x), std::max(most.y, spot.y)};
  }
  return {least.x, least.y, most.x - least.x, most.y - least.y};
}

/// True where the spot lies inside the ring: crossings of a ray (even-odd).
bool inside(const std::vector<Spot>& ring, const Spot& spot) {
  bool in = false;
  for (std::size_t i = 0, k = ring.size() - 1; i < ring.size(); k = i++) {
    const Spot &a = ring[i], &b = ring[k];
    if ((a.y > spot.y) == (b.y > spot.y)) continue;
    if (spot.x < (b.x - a.x) * (spot.y - a.y) / (b.y - a.y) + a.x) in = !in;
  }
  return in;
}

/// Places inside a zone for words, its middle first.
std::vector<Spot> places_in(const std::vector<Spot>& ring, double down) {
  const Box box = extent(ring);
  std::vector<Spot> places;
  for (const double y : {0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9}) {
    for (const double x : {0.5, 0.35, 0.65, 0.2, 0.8}) {
      const Spot spot{box.x + box.width * x, box.y + box.height * y};
      if (inside(ring, spot)) places.push_back({spot.x, spot.y + down});
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
      const std::vector<Spot> ring = page.view(zone.outline);
      page.paper.svg.begin_group(fmt::format("zone {}", batch.number));
      page.paper.svg.polygon(ring, batch.number % 2 == 0 ? Fill::pale : Fill::paper, usual_pen);
      page.paper.svg.end_group();
    }
  }
  for (const OpeningPlan& opening : page.slab.openings) {
    page.paper.svg.polygon(page.view(chords(opening.edge, Length::mm(0.05))), Fill::waste,
                           usual_pen);
  }
}

void numbers(Page& page) {
  for (const Batch& batch : page.plan.batches) {
    for (const Zone& zone : batch.zones) {
      if (zone.slab != page.slab.name || zone.lift != page.lift) continue;
      const std::vector<Spot> ring = page.view(zone.outline);
      const Box box = extent(ring);
      TextStyle style = number_style;
      style.size = std::clamp(box.width / 3, 2.8, 6.0);
      if (!page.labels.put(page.paper.svg, std::to_string(batch.number), style,
                           places_in(ring, 1))) {
        continue;
      }
      for (const std::string& text :
           {"water " + show_clock(batch.contact), "placed " + show_clock(batch.place_end)}) {
        if (text_width(text, small) < box.width) {
          (void)page.labels.put(page.paper.svg, text, small, places_in(ring, style.size));
        }
      }
    }
  }
}

/// Joints of this lift; one between lifts has no line. Returns whether there is any.
bool joints(Page& page) {
  bool any = false;
  for (const Joint& joint : page.plan.pour.joints) {
    if (joint.slab != page.slab.name || joint.line.size() < 2) continue;
    const auto lies_here = [&](int number) {
      const auto& batch = page.plan.batches[static_cast<std::size_t>(number - 1)];
      return std::any_of(batch.zones.begin(), batch.zones.end(), [&](const Zone& zone) {
        return zone.slab == page.slab.name && zone.lift == page.lift;
      });
    };
    if (!lies_here(joint.first) || !lies_here(joint.second)) continue;
    any = true;
    const std::vector<Spot> line = page.view(joint.line);
    page.paper.svg.begin_group(fmt::format("joint {} {}", joint.first, joint.second));
    page.paper.svg.polyline(line, wet_edge_pen);
    page.paper.svg.end_group();
    const Box box = extent(line);
    TextStyle style = small;
    style.turn = box.height > box.width ? -90 : 0;
    std::vector<Spot> places;
    for (const double share : {0.2, 0.8, 0.35, 0.65, 0.5}) {
      const auto at = static_cast<std::size_t>(share * static_cast<double>(line.size() - 1));
      const Spot &a = line[at], &b = line[std::min(at + 1, line.size() - 1)];
      places.push_back({a.x + (b.x - a.x) * share + (style.turn != 0 ? -0.8 : 0),
                        a.y + (b.y - a.y) * share - (style.turn != 0 ? 0 : 0.8)});
    }
    (void)page.labels.put(page.paper.svg, "waits " + show(joint.wait), style, places);
  }
  return any;
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
  const View view = view_of(bounding_box(slab.outline), inner(paper.room()), plan.units);
  Page page{plan, slab, lift, paper, view, Labels(paper.room())};
  zones(page);
  const bool any = joints(page);
  paper.svg.polygon(view(slab.outline), Fill::none, outline_pen);
  numbers(page);
  paper.scale_bar(view.scale);
  paper.legend(Fill::pale, usual_pen, "zone of one batch");
  if (any) paper.legend(Fill::none, wet_edge_pen, "fresh edge to be met in time");
  if (!slab.openings.empty()) paper.legend(Fill::waste, usual_pen, "opening");
  paper.note(sweep_words(plan, slab) +
             "Times are h:min from the first water of batch 1: start a stopwatch then.");
  return {name, title, paper.svg.str()};
}

}  // namespace

std::vector<Drawing> pour_zones(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
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
