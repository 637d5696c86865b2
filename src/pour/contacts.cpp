// SPDX-License-Identifier: MIT
#include "pour/contacts.h"

#include <algorithm>
#include <optional>

#include "core/vec.h"

namespace strikeoff {
namespace {

constexpr double beside = 1e-7;  // m: lines this near are one

/// What two edges that run opposite ways share, along the first.
std::optional<CellContact> shared(const Point& a, const Point& b, const Point& c, const Point& d) {
  const Vec w = vec(a, b), to_c = vec(a, c), to_d = vec(a, d);
  const double length = w.length();
  if (std::abs(cross(w, to_c)) > beside * length || std::abs(cross(w, to_d)) > beside * length) {
    return std::nullopt;
  }
  const double from = std::max(0.0, dot(to_d, w) / (length * length));
  const double to = std::min(1.0, dot(to_c, w) / (length * length));
  if ((to - from) * length < 1e-6) return std::nullopt;
  return CellContact{0, 0, from > 0 ? d : a, to < 1 ? c : b};
}

struct Boxed {
  std::size_t cell = 0;
  const Polygon* outline = nullptr;
  Rectangle box;
};

bool are_near(const Rectangle& a, const Rectangle& b) {
  const Length by = Length::m(beside);
  return a.at.x <= b.at.x + b.length + by && b.at.x <= a.at.x + a.length + by &&
         a.at.y <= b.at.y + b.depth + by && b.at.y <= a.at.y + a.depth + by;
}

/// Contacts that go on from one another along one line.
void join(std::vector<CellContact>& found, const CellContact& next) {
  if (!found.empty()) {
    CellContact& last = found.back();
    const Vec w = vec(last.from, last.to), v = vec(last.to, next.from), u = vec(next.from, next.to);
    if (last.first == next.first && last.second == next.second && v.length() < 1e-6 &&
        std::abs(cross(w.unit(), u.unit())) < 1e-6) {
      last.to = next.to;
      return;
    }
  }
  found.push_back(next);
}

}  // namespace

std::vector<CellContact> contacts_of(const std::vector<CutCell>& cells, const SlabPlan& shape) {
  std::vector<Boxed> parts;
  for (std::size_t k = 0; k < cells.size(); ++k) {
    for (const Polygon& part : cells[k].parts) parts.push_back({k, &part, bounding_box(part)});
  }
  std::vector<Polygon> holes = holes_of(shape);
  const auto on_edge = [&](const Point& place) {
    constexpr Length near = Length::mm(0.1);  // arcs are drawn by chords
    return distance(place, shape.outline) < near ||
           std::any_of(holes.begin(), holes.end(),
                       [&](const Polygon& hole) { return distance(place, hole) < near; });
  };
  std::vector<CellContact> contacts;
  std::stable_sort(parts.begin(), parts.end(),
                   [](const Boxed& a, const Boxed& b) { return a.box.at.x < b.box.at.x; });
  for (std::size_t p = 0; p < parts.size(); ++p) {
    for (std::size_t q = p + 1; q < parts.size(); ++q) {
      const bool ahead = parts[p].cell < parts[q].cell;
      const Boxed &a = parts[ahead ? p : q], &b = parts[ahead ? q : p];
      if (parts[q].box.at.x > parts[p].box.at.x + parts[p].box.length + Length::m(beside)) break;
      if (a.cell == b.cell || !are_near(a.box, b.box)) continue;
      for (std::size_t i = 0; i < a.outline->size(); ++i) {
        for (std::size_t k = 0; k < b.outline->size(); ++k) {
          auto found = shared((*a.outline)[i], (*a.outline)[(i + 1) % a.outline->size()],
                              (*b.outline)[k], (*b.outline)[(k + 1) % b.outline->size()]);
          if (!found) continue;
          found->first = a.cell;
          found->second = b.cell;
          join(contacts, *found);
        }
      }
    }
  }
  std::stable_sort(contacts.begin(), contacts.end(), [](const CellContact& a, const CellContact& b) {
    return a.first != b.first ? a.first < b.first : a.second < b.second;
  });
  std::erase_if(contacts, [](const CellContact& contact) {
    return distance(contact.from, contact.to) < least_joint;
  });
  for (CellContact& contact : contacts) {
    contact.is_joint = distance(contact.from, contact.to) >= least_side_joint ||
                       (on_edge(contact.from) && on_edge(contact.to));
  }
  return contacts;
}

}  // namespace strikeoff
