// SPDX-License-Identifier: MIT
#include "plan/supplies.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <map>

#include "basis/basis.h"
#include "core/format.h"
#include "plan/purchasing.h"
#include "site/wet_cure.h"
#include "slab/stiffness.h"

namespace strikeoff {
namespace {

/// What all slabs of the job need together.
struct Totals {
  FormQuantities forms;
  Area top;  // outline less openings
};

Totals total_of(const Plan& plan) {
  Totals sum;
  for (const SlabPlan& slab : plan.slabs) {
    sum.forms.edge += slab.forms.edge;
    sum.forms.knock_out += slab.forms.knock_out;
    sum.forms.isolation += slab.forms.isolation;
    sum.forms.foam += slab.forms.foam;
    sum.forms.seams += slab.forms.seams;
    sum.forms.ledger += slab.forms.ledger;
    const auto& battens = slab.forms.ledger_pieces;
    sum.forms.ledger_pieces.insert(sum.forms.ledger_pieces.end(), battens.begin(), battens.end());
    sum.forms.panel += slab.forms.panel;
    sum.forms.formed += slab.forms.formed;
    sum.forms.stakes += slab.forms.stakes;
    sum.forms.props += slab.forms.props;
    sum.forms.brackets += slab.forms.brackets;
    sum.top += slab.top_area;
  }
  return sum;
}

bool is_strip(const Part& part) {
  return part.role == "edge strip" || part.role == "soffit strip" || part.role == "soffit panel" ||
         part.role == "knock-out strip";
}

Length screw_spacing_of(const Plan& plan, const std::string& slab) {
  const auto found = std::find_if(plan.slabs.begin(), plan.slabs.end(),
                                  [&](const SlabPlan& one) { return one.name == slab; });
  return found->forms.screw_spacing;
}

/// "200 mm", "140 mm to 200 mm": of all slabs.
std::string screw_spacings(const Plan& plan) {
  const auto [least, most] = std::minmax_element(
      plan.slabs.begin(), plan.slabs.end(), [](const SlabPlan& a, const SlabPlan& b) {
        return a.forms.screw_spacing < b.forms.screw_spacing;
      });
  const std::string closest = show(least->forms.screw_spacing, plan.units);
  const std::string widest = show(most->forms.screw_spacing, plan.units);
  return closest == widest ? closest : closest + " to " + widest;
}

/// Strips along their length; cleats over joints with two screws each side at least (common
/// practice, no source); a ledger to the base at the same spacing.
Need strip_screws(const Plan& plan) {
  int screws = 0;
  int pieces = 0;
  for (const Part& part : plan.cut_list.parts) {
    if (!is_strip(part) && part.role != "cleat") continue;
    const int along = count_along(part.length, screw_spacing_of(plan, part.slab));
    screws += part.quantity * (part.role == "cleat" ? std::max(4, along) : along);
    pieces += part.quantity;
  }
  bool ledger = false;
  for (const SlabPlan& slab : plan.slabs) {
    if (slab.forms.ledger <= Length{}) continue;
    screws += count_along(slab.forms.ledger, slab.forms.screw_spacing);
    ledger = true;
  }
  return {"strip-screws", static_cast<double>(screws),
          fmt::format("{}{}, a screw every {} and at each end: {}",
                      count(pieces, "strip or cleat", "strips and cleats"),
                      ledger ? " and the ledger" : "", screw_spacings(plan), screws),
          ""};
}

Need by_length(std::string id, Length length, Units units) {
  return {std::move(id), length.in_m(), show(length, units), ""};
}

Need by_area(std::string id, Area area, Units units) {
  return {std::move(id), area.si(), show(area, units), ""};
}

/// "cut 2 x 78 in and 2 x 24 in", longest first.
std::string battens_to_cut(const std::vector<Length>& pieces, Units units) {
  std::map<Length, int, std::greater<>> lengths;
  for (const Length piece : pieces) ++lengths[piece];
  std::string text;
  std::size_t number = 0;
  for (const auto& [length, quantity] : lengths) {
    const bool last = ++number == lengths.size();
    text += number == 1 ? "cut " : last ? " and " : ", ";
    text += fmt::format("{} x {}", quantity, show(length, units));
  }
  return text;
}

Need ledger_battens(const FormQuantities& forms, Units units) {
  Need need = by_length("ledger-batten", forms.ledger, units);
  need.note = battens_to_cut(forms.ledger_pieces, units);
  for (const Length piece : forms.ledger_pieces) need.longest = std::max(need.longest, piece);
  return need;
}

std::vector<Need> needs(const Job& job, const Plan& plan) {
  const Totals sum = total_of(plan);
  const FormQuantities& forms = sum.forms;
  const Units units = job.units;
  return {
      strip_screws(plan),
      by_area("panel-screws", forms.panel, units),
      by_area("bedding", forms.panel, units),
      by_length("sealant", forms.edge + forms.knock_out + forms.seams, units),
      by_length("seam-tape", forms.seams, units),
      by_length("form-tape", forms.edge + forms.knock_out, units),
      by_area("release-agent", forms.formed, units),
      ledger_battens(forms, units),
      by_length("isolation-strip", forms.isolation, units),
      by_area("apron-foam", forms.foam, units),
      {"stakes", static_cast<double>(forms.stakes), "", ""},
      {"prop", static_cast<double>(forms.props), "",
       forms.props > 0 ? "measure from the floor to the soffit before buying" : ""},
      {"bracket", static_cast<double>(forms.brackets), "",
       forms.brackets > 0 ? "rated for the slab's weight and someone leaning on its edge" : ""},
      by_area("curing-sheet", sum.top, units),
      by_area("damp-cloth", is_ordinary(job.mix) ? sum.top : Area{}, units),
  };
}

/// A supply's unit as the job's reader measures it: the catalogue is metric.
struct ShownUnit {
  std::string name;
  double per_catalogue_unit = 1;
};

/// Less than 0.1 L is shown in the next smaller unit: "1.3 fl oz" is readable, "0.04 qt" is not.
ShownUnit shown_unit(const std::string& unit, double amount, Units units) {
  if (unit == "L" && amount < 0.1) {
    if (units == Units::metric) return {"mL", 1000};
    return {"fl oz", in_quarts(litres(1)) * 32};
  }
  if (units == Units::metric) return {unit, 1};
  if (unit == "m") return {"ft", Length::m(1).in_in() / 12};
  if (unit == "m2") return {"ft2", in_square_feet(Area::from_si(1))};
  if (unit == "L") return {"qt", in_quarts(litres(1))};
  return {unit, 1};
}

/// Screws and cartridges come whole; tape and sheet are measured.
bool is_counted(const std::string& unit) {
  return unit != "m" && unit != "m2" && unit != "L";
}

}  // namespace

Material supply_row(const Job& job, const Supply& good, const Need& need) {
  const bool counted = is_counted(good.unit);
  const double exact = need.amount * good.rate;
  const double needed = counted ? std::ceil(exact - 1e-9) : exact;
  const ShownUnit unit = shown_unit(good.unit, needed, job.units);
  Material row;
  row.item = good.item;
  row.stock = good.id;
  row.needed = needed * unit.per_catalogue_unit;
  row.unit = unit.name;
  // The job counts screws, but rolls and cans of what is measured.
  const double held = quantity_on_hand(job, row) * (counted ? 1 : good.pack);
  row.on_hand = held * unit.per_catalogue_unit;
  row.pack = good.pack_name;
  row.basis = need.worked.empty() ? basis(need.id) : basis(need.id, need.worked);
  buy(job, whole_packs((needed - held) / good.pack), good.price, {}, row);
  row.note = need.note;
  if (need.longest.in_m() > good.pack) {
    row.note += fmt::format("; where a {} is too short, two end to end", good.pack_name);
  }
  return row;
}

std::vector<Material> list_supplies(const Job& job, const Catalogue& catalogue, const Plan& plan) {
  std::vector<Material> rows;
  for (const Need& need : needs(job, plan)) {
    if (need.amount > 0) rows.push_back(supply_row(job, supply(catalogue, need.id), need));
  }
  const std::vector<Material> finish = finish_supplies(job, catalogue, plan.finish);
  rows.insert(rows.end(), finish.begin(), finish.end());
  return rows;
}

}  // namespace strikeoff
