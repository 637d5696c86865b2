// SPDX-License-Identifier: MIT
#include "plan/purchasing.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "plan/materials.h"

namespace strikeoff {
namespace {

double price_at(int packs, double price, const std::vector<PriceBreak>& breaks) {
  for (const PriceBreak& step : breaks) {
    if (packs >= step.from) price = step.price;
  }
  return price;
}

std::optional<double> own_price(const Job& job, const Material& material) {
  for (const std::string& name : {material.item, material.stock}) {
    if (const auto found = job.prices.find(name); found != job.prices.end()) return found->second;
  }
  return std::nullopt;
}

}  // namespace

Money to_cents(double amount) {
  // 1e-9 of a currency unit lifts a half that binary fractions put just below itself (1.005).
  return Money::from_si(std::round(amount * 100 + std::copysign(1e-7, amount)) / 100);
}

int whole_packs(double packs) {
  return static_cast<int>(std::max(0.0, std::ceil(packs - 1e-9)));
}

double quantity_on_hand(const Job& job, const Material& material) {
  double quantity = 0;
  for (const OnHand& there : job.on_hand) {
    const bool offcut = there.length || there.width;
    if (!offcut && (there.item == material.item || there.item == material.stock)) {
      quantity += there.quantity;
    }
  }
  return quantity;
}

Purchase cheapest(int needed, double price, const std::vector<PriceBreak>& breaks) {
  Purchase best{needed, price_at(needed, price, breaks)};
  if (needed <= 0) return best;
  for (const PriceBreak& step : breaks) {
    const double saving = best.packs * best.price - step.from * step.price;
    // Half a cent is no saving: among equals the fewest packs.
    if (step.from > needed && saving > 0.005) best = {step.from, step.price};
  }
  return best;
}

void buy(const Job& job, int packs, std::optional<double> catalogue_price,
         const std::vector<PriceBreak>& breaks, Material& material) {
  material.packs = packs;
  const std::optional<double> own = own_price(job, material);
  const bool at_breaks = !own && !breaks.empty();
  std::optional<double> price = own ? own : catalogue_price;
  // Breaks alone are a price from the first of them on.
  if (at_breaks && !price && breaks.front().from <= std::max(packs, 1)) {
    price = breaks.front().price;
  }
  if (!price) return;
  Purchase purchase{packs, *price};
  if (at_breaks) purchase = cheapest(packs, *price, breaks);
  if (purchase.packs > packs) {
    const double without = packs * price_at(packs, *price, breaks);
    material.note = fmt::format("{} {} cost less than {}: {:.2f} instead of {:.2f}", purchase.packs,
                                material.unit, packs, purchase.packs * purchase.price, without);
  }
  material.packs = purchase.packs;
  material.price = Money::from_si(purchase.price);
  material.cost = to_cents(purchase.packs * purchase.price);
}

Cost add_up(const Job& job, const std::vector<Material>& materials) {
  Cost cost;
  cost.currency = job.currency;
  for (const Material& material : materials) {
    if (material.packs == 0) continue;
    if (!material.price || !material.cost) {
      cost.unpriced.push_back(material.item);
      continue;
    }
    cost.lines.push_back({material.item, material.packs, *material.price, *material.cost});
    cost.subtotal += *material.cost;
  }
  cost.subtotal = to_cents(cost.subtotal.si());  // sums of cents gather rounding
  cost.tax = to_cents(cost.subtotal.si() * job.tax);
  cost.total = to_cents((cost.subtotal + cost.tax).si());
  return cost;
}

}  // namespace strikeoff
