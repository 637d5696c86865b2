// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/vec.h"
#include "strikeoff/geometry.h"

namespace strikeoff {

/// Places in metres, one after the other.
using Trail = std::vector<Vec>;
[[nodiscard]] Trail trail_of(const Polygon& polygon);
[[nodiscard]] Polygon polygon_of(const Trail& trail);

/// A straight front across a passage, from its left to its right side.
struct Front {
  Vec left, right;
  double along_left = 0, along_right = 0;  // m of each side that lie behind it
  [[nodiscard]] double length() const { return (right - left).length(); }
};

/// A stretch of a slab between two ends, crossed by straight fronts from one side to the other: a
/// worktop, the arms of an L or U one after the other, or a ring cut open. All in metres and m2.
class Passage {
 public:
  /// The sides as lines of chords from the start to the end, as seen by who walks from one to the
  /// other; `holes` (anticlockwise) lie between them. Fronts keep `clearance` off the `corners`
  /// where a slab cracks first, as far as they can.
  Passage(Trail left, Trail right, std::vector<Trail> holes, std::vector<Vec> corners,
          double clearance);

  /// No front ends on the mouth of an arm that leaves one side between these places along it,
  /// where any other does.
  void set_mouth(bool on_left, double from, double to);

  [[nodiscard]] double area() const { return area_; }
  [[nodiscard]] double clearance() const { return clearance_; }
  [[nodiscard]] Front start() const;
  [[nodiscard]] Front end() const;
  /// What lies between the start and a front, without holes.
  [[nodiscard]] double behind(const Front& front) const;
  /// How much of a front lies in concrete.
  [[nodiscard]] double joint_length(const Front& front) const;
  /// True where an end of the joint, or where it meets a hole, is too near to a corner, or where it
  /// passes a hole nearer than half as far.
  [[nodiscard]] bool is_near_corner(const Front& front) const;
  /// The shortest front that ends at a place of one side.
  [[nodiscard]] std::optional<Front> shortest_at(bool on_left, double along) const;
  /// The shortest front through a hole's middle that lies between two others.
  [[nodiscard]] std::optional<Front> across(const Vec& middle, const Front& back,
                                            const Front& ahead) const;

  /// Fronts with these areas behind them, rising, that do not cross. Each square to its forms where
  /// that keeps it off the corners; else the set with the shortest joints, of which one that ends
  /// too near to a corner counts a quarter more (assumption). Nothing where there is none.
  [[nodiscard]] std::optional<std::vector<Front>> fronts(const std::vector<double>& behind) const;

 private:
  /// Fronts whose ends move along straight: from `from` to `to`.
  struct Turn {
    double left0 = 0, right0 = 0, left1 = 0, right1 = 0;  // along the sides
    double behind0 = 0, behind1 = 0;
  };
  struct Side {
    Trail line;
    std::vector<double> along;  // at each corner
    std::vector<double> swept;  // twice the area from the origin, up to each corner
    explicit Side(Trail corners);
    [[nodiscard]] std::size_t piece(double at) const;
    [[nodiscard]] Vec at(double along) const;
    [[nodiscard]] double swept_to(double along) const;
    [[nodiscard]] double length() const { return along.back(); }
  };
  struct Candidate {
    Front front;
    double cost = 0;
  };

  [[nodiscard]] Front front(double along_left, double along_right) const;
  [[nodiscard]] bool is_clear(const Front& front) const;
  [[nodiscard]] bool is_in_mouth(const Front& front) const;
  [[nodiscard]] std::vector<std::pair<double, double>> crossings(const Front& front,
                                                                 const Trail& hole) const;
  void add_turn(double left0, double right0, double left1, double right1,
                std::vector<Turn>& turns) const;
  void add_square();
  void add_pivots();
  void add_fan(double at, bool on_left, std::vector<Turn>& turns) const;
  [[nodiscard]] std::optional<Front> solve(const Turn& turn, double behind) const;
  void add_candidates(const std::vector<Turn>& turns, double behind,
                      std::vector<Candidate>& candidates) const;
  [[nodiscard]] std::vector<Candidate> candidates(double behind) const;

  Side left_, right_;
  std::vector<Trail> holes_;
  std::vector<double> hole_areas_;
  std::vector<Vec> corners_;
  double clearance_ = 0, area_ = 0;
  bool mouth_on_left_ = false;
  double mouth_from_ = 0, mouth_to_ = 0;
  std::vector<Turn> square_, pivots_;
};

/// The part of a polygon's area that lies to the right of a line; of a convex or any polygon.
[[nodiscard]] double area_right_of(const Trail& polygon, const Vec& a, const Vec& b);

}  // namespace strikeoff
