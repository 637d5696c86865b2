// SPDX-License-Identifier: MIT
#include "pour/sweep_field.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace strikeoff {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

/// Half the cotangent of the angle at c: what a linear triangle adds to the weight between a and b.
double half_cotangent(const Point& a, const Point& b, const Point& c) {
  const double ax = (a.x - c.x).in_nm(), ay = (a.y - c.y).in_nm();
  const double bx = (b.x - c.x).in_nm(), by = (b.y - c.y).in_nm();
  const double cross = ax * by - ay * bx;
  return cross > 0 ? (ax * bx + ay * by) / cross / 2 : 0;
}

bool turns_right(const Point& before, const Point& at, const Point& after) {
  const double ax = (at.x - before.x).in_nm(), ay = (at.y - before.y).in_nm();
  const double bx = (after.x - at.x).in_nm(), by = (after.y - at.y).in_nm();
  return ax * by - ay * bx < -1e-9 * std::hypot(ax, ay) * std::hypot(bx, by);
}

/// Sparse symmetric equations: sums of weight x difference to others, of which some are known.
struct Equations {
  std::vector<std::size_t> first{0};  // of each row, and one past the last's
  std::vector<std::size_t> column;
  std::vector<double> weight;
  std::vector<double> diagonal, right;

  [[nodiscard]] std::size_t size() const { return diagonal.size(); }
  void multiply(const std::vector<double>& x, std::vector<double>& out) const;
};

void Equations::multiply(const std::vector<double>& x, std::vector<double>& out) const {
  for (std::size_t i = 0; i < size(); ++i) {
    double sum = diagonal[i] * x[i];
    for (std::size_t k = first[i]; k < first[i + 1]; ++k) sum -= weight[k] * x[column[k]];
    out[i] = sum;
  }
}

/// The incomplete Cholesky factors that differ from the matrix on the diagonal only (Meijerink and
/// van der Vorst 1977, from memory): they exist, for no weight is negative.
class Preconditioner {
 public:
  explicit Preconditioner(const Equations& equations) : e_(equations), inverse_(e_.size()) {
    for (std::size_t i = 0; i < e_.size(); ++i) {
      double d = e_.diagonal[i];
      for (std::size_t k = e_.first[i]; k < e_.first[i + 1]; ++k) {
        if (e_.column[k] < i) d -= e_.weight[k] * e_.weight[k] * inverse_[e_.column[k]];
      }
      // Rounding may leave nothing of a node that only hangs on the one before it.
      inverse_[i] = 1 / std::max(d, 1e-12 * e_.diagonal[i]);
    }
  }

  void apply(const std::vector<double>& in, std::vector<double>& out) const {
    for (std::size_t i = 0; i < e_.size(); ++i) {
      double sum = in[i];
      for (std::size_t k = e_.first[i]; k < e_.first[i + 1]; ++k) {
        if (e_.column[k] < i) sum += e_.weight[k] * out[e_.column[k]];
      }
      out[i] = sum * inverse_[i];
    }
    for (std::size_t i = e_.size(); i-- > 0;) {
      double sum = 0;
      for (std::size_t k = e_.first[i]; k < e_.first[i + 1]; ++k) {
        if (e_.column[k] > i) sum += e_.weight[k] * out[e_.column[k]];
      }
      out[i] += sum * inverse_[i];
    }
  }

 private:
  const Equations& e_;
  std::vector<double> inverse_;
};

double product(const std::vector<double>& a, const std::vector<double>& b) {
  return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

/// Conjugate gradients (Hestenes and Stiefel 1952).
std::vector<double> solved(const Equations& equations) {
  constexpr double small = 1e-12;  // of the first residual
  constexpr int most_steps = 5000;
  const std::size_t n = equations.size();
  const Preconditioner preconditioner(equations);
  std::vector<double> x(n, 0.0), residual = equations.right, way(n), ahead(n), image(n);
  preconditioner.apply(residual, way);
  ahead = way;
  double size = product(residual, way);
  const double enough = size * small * small;
  for (int step = 0; step < most_steps && size > enough; ++step) {
    equations.multiply(way, image);
    const double length = size / product(way, image);
    for (std::size_t i = 0; i < n; ++i) {
      x[i] += length * way[i];
      residual[i] -= length * image[i];
    }
    preconditioner.apply(residual, ahead);
    const double next = product(residual, ahead);
    for (std::size_t i = 0; i < n; ++i) way[i] = ahead[i] + next / size * way[i];
    size = next;
  }
  return x;
}

}  // namespace

SweepFields::SweepFields(const PourMesh& mesh)
    : nodes_(mesh.nodes),
      triangles_(mesh.triangles),
      re_entrant_(mesh.nodes.size(), false),
      first_(1, 0),
      around_(3 * mesh.triangles.size()),
      first_around_(mesh.nodes.size() + 1, 0) {
  for (const auto& ring : mesh.rings) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const std::size_t node = ring[k];
      if (turns_right(nodes_[ring[(k + ring.size() - 1) % ring.size()]], nodes_[node],
                      nodes_[ring[(k + 1) % ring.size()]])) {
        re_entrant_[node] = true;
      }
    }
  }
  for (const auto& t : triangles_) {
    for (const std::size_t node : t) ++first_around_[node + 1];
  }
  std::partial_sum(first_around_.begin(), first_around_.end(), first_around_.begin());
  std::vector<std::size_t> next = first_around_;
  for (std::size_t t = 0; t < triangles_.size(); ++t) {
    for (const std::size_t node : triangles_[t]) around_[next[node]++] = t;
  }
  const auto add = [&](std::size_t node, std::size_t to, double weight) {
    const auto begin = links_.begin() + static_cast<std::ptrdiff_t>(first_[node]);
    const auto known =
        std::find_if(begin, links_.end(), [&](const Link& link) { return link.to == to; });
    if (known == links_.end()) {
      links_.push_back({to, weight});
    } else {
      known->weight += weight;
    }
  };
  for (std::size_t node = 0; node < nodes_.size(); ++node) {
    for (std::size_t k = first_around_[node]; k < first_around_[node + 1]; ++k) {
      const auto& t = triangles_[around_[k]];
      const std::size_t at =
          static_cast<std::size_t>(std::find(t.begin(), t.end(), node) - t.begin());
      const std::size_t b = t[(at + 1) % 3], c = t[(at + 2) % 3];
      add(node, b, half_cotangent(nodes_[node], nodes_[b], nodes_[c]));
      add(node, c, half_cotangent(nodes_[c], nodes_[node], nodes_[b]));
    }
    first_.push_back(links_.size());
  }
  // A weight that is nothing but rounding may have its other half just below nothing.
  for (Link& link : links_) link.weight = link.weight > 1e-12 ? link.weight : 0;
}

/// The nodes that reach start or end, these first, the others in the order in which they are met:
/// links then are short.
std::vector<std::size_t> SweepFields::reached_from(const std::vector<std::size_t>& start,
                                                   const std::vector<std::size_t>& end) const {
  std::vector<bool> seen(nodes_.size(), false);
  std::vector<std::size_t> order;
  const auto meet = [&](std::size_t node) {
    if (!seen[node]) order.push_back(node);
    seen[node] = true;
  };
  std::for_each(start.begin(), start.end(), meet);
  std::for_each(end.begin(), end.end(), meet);
  for (std::size_t k = 0; k < order.size(); ++k) {
    for (std::size_t i = first_[order[k]]; i < first_[order[k] + 1]; ++i) {
      if (links_[i].weight > 0) meet(links_[i].to);
    }
  }
  return order;
}

std::vector<double> SweepFields::harmonic(const std::vector<std::size_t>& start,
                                          const std::vector<std::size_t>& end) const {
  std::vector<double> field(nodes_.size(), 1.0);
  std::vector<bool> known(nodes_.size(), false);
  for (const std::size_t node : end) known[node] = true;
  for (const std::size_t node : start) {
    known[node] = true;
    field[node] = 0;
  }
  std::vector<std::size_t> unknown;
  std::vector<std::size_t> row(nodes_.size(), none);
  for (const std::size_t node : reached_from(start, end)) {
    if (known[node]) continue;
    row[node] = unknown.size();
    unknown.push_back(node);
  }
  Equations equations;
  for (const std::size_t node : unknown) {
    double diagonal = 0, right = 0;
    for (std::size_t k = first_[node]; k < first_[node + 1]; ++k) {
      const auto& [to, weight] = links_[k];
      if (!(weight > 0)) continue;
      diagonal += weight;
      if (known[to]) {
        right += weight * field[to];
      } else {
        equations.column.push_back(row[to]);
        equations.weight.push_back(weight);
      }
    }
    equations.first.push_back(equations.column.size());
    equations.diagonal.push_back(diagonal);
    equations.right.push_back(right);
  }
  const std::vector<double> values = solved(equations);
  for (std::size_t i = 0; i < values.size(); ++i) {
    field[unknown[i]] = std::clamp(values[i], 0.0, 1.0);
  }
  return field;
}

}  // namespace strikeoff
