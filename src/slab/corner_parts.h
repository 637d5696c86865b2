// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slab/form_shape.h"

namespace strikeoff {

/// The layers of a bent corner, each as long as the middle of its thickness.
[[nodiscard]] std::vector<Part> bend_layers(const FormShape& shape, const Face& face);

/// A block as far as the corner's set-back both ways; `what` follows its place.
[[nodiscard]] Part corner_block(const FormShape& shape, std::size_t corner, Length height,
                                const char* what);

/// Under what a cut adds to the slab at a re-entrant corner: the triangle between its chord and the
/// sharp corner, by its longest side and height. Nothing where the slab has no soffit there.
[[nodiscard]] std::optional<Part> corner_soffit(const FormShape& shape, const Face& face);

/// The foam inside an apron, and what closes the apron's ends where a plain side comes next: a
/// piece from the base's corner to the outline's, as high as the apron and the soffit it stands on.
struct ApronParts {
  Part foam;
  std::vector<Part> ends;
  Area inner_face;  // of the foam
  Area formed;      // what the mix touches of foam and ends
};
[[nodiscard]] ApronParts apron_parts(const FormShape& shape, std::size_t k);

}  // namespace strikeoff
