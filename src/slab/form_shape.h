// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slab/corners.h"
#include "slab/heights.h"
#include "slab/stiffness.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// All that the form parts of one slab are worked out from.
struct FormShape {
  const Slab& slab;
  const Forms& forms;
  Polygon outline;  // sharp
  Polygon inside;   // of its aprons
  std::vector<Face> faces;
  std::vector<StripEnds> edge_ends, soffit_ends;  // per face, per side
  Heights heights;
  FormSpacing spacing;
  std::vector<Length> edge_heights;  // per side

  [[nodiscard]] Length s() const { return forms.strip_stock.front().thickness; }
  [[nodiscard]] std::size_t before(std::size_t k) const {
    return (k + outline.size() - 1) % outline.size();
  }
  [[nodiscard]] std::size_t after(std::size_t k) const { return (k + 1) % outline.size(); }
};

/// `fresh` is the mix's density.
[[nodiscard]] FormShape form_shape(const Slab& slab, const Forms& forms, Density fresh);

/// The visible edge of a side where it is highest: the base's hollow, the top's rise and an apron
/// included.
[[nodiscard]] Length concrete_height(const FormShape& shape, std::size_t k);
/// Of a face's strip. A cut corner's strip is as high as the higher of its neighbours.
[[nodiscard]] Length height_of(const FormShape& shape, const Face& face);

[[nodiscard]] std::string corner_name(const FormShape& shape, std::size_t corner);
[[nodiscard]] std::string name_of(const FormShape& shape, const Face& face);

/// Precondition: the corner is cut.
[[nodiscard]] const CornerCut& cut_at(const Slab& slab, std::size_t corner);
[[nodiscard]] Length arc_length(const FormShape& shape, const CornerCut& cut);

/// Form faces the mix touches: the inside of the edge strips, the soffits beyond the panel's
/// rim, and the knock-outs above the panel. Those of aprons come on top.
[[nodiscard]] Area formed_area(const FormShape& shape, const SlabPlan& plan);

}  // namespace strikeoff
