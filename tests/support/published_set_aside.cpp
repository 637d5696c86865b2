// SPDX-License-Identifier: MIT
#include <array>

#include "support/published.h"

namespace strikeoff::test {
namespace {

struct Aside {
  const char* id;
  const char* reason;
};

// Wrong in print, or printed for another purpose.
constexpr Aside misprints[] = {
    {"EV-12",
     "recalled with a misplaced bracket, and another formula than the two that the program has"},
    {"EV-T15", "the printed row is wrong: the table's own formula gives 0.157 and it prints 0.180"},
    {"AV-12/sand", "printed from the volume rounded to 8.00 ft3: not rounded it is 1317 lb"},
    {"TV-03/wrong_corner_average", "the wrong answer, printed as a warning"},
    {"EV-10/E_raw", "a negative rate; the program has zero for it, which is E_clamped"},
    {"MT-16", "rounded so that the factor at its own reference is 0.998 and not 1"},
    {"MT-17", "rounded so that the factor at its own reference is 0.998 and not 1"},
    {"MT-18", "rounded so that the factor at its own reference is 0.998 and not 1"},
    {"PS-10", "another formula, to 0.02 %: the program's keeps to the same table within 0.15 %"},
};

// The program says something else, and should: its figure errs on the safe side, or is another's.
constexpr Aside differ[] = {
    {"ST-01",
     "100 F: no one activation energy gives the table, whose 1.67 h are 2.0 h by the "
     "program's 50 kJ/mol: 20 % longer, twice the tolerance"},
    {"ST-07",
     "40 F: no one activation energy gives the table, whose 14.25 h are 12.5 h by the "
     "program's 30 kJ/mol: 12 % shorter, which is the safe side"},
    {"ST-08",
     "30 F: the table's 19 h are 16.4 h by the program's 30 kJ/mol: 14 % shorter, which "
     "is the safe side"},
};

constexpr Aside no_such_number[] = {
    {"CT-01/sum_mcT", "a step of the sum, which the program does not show"},
    {"CT-01/sum_mc", "a step of the sum, which the program does not show"},
    {"CT-04/numerator", "a step of the sum, which the program does not show"},
    {"CT-04/denominator", "a step of the sum, which the program does not show"},
    {"EV-11",
     "kilograms over area and time are multiplied by the plan alone: see the plan's "
     "tests of the water that curing takes"},
    {"EV-R3", "a limit for latex-modified mixes, which the job cannot name"},
    {"EV-R4", "a limit for silica-fume concrete, which the job cannot name"},
    {"ST-R1", "penetration resistance is not planned: the bag states its final set as a time"},
    {"AV-05", "the program proportions no mixes: it takes bags as they come"},
    {"AV-06", "the program proportions no mixes: it takes bags as they come"},
    {"AV-07/FA_lb", "the program orders no sand or gravel"},
    {"AV-07/FA_tons", "the program orders no sand or gravel"},
    {"AV-07/CA_tons", "the program orders no sand or gravel"},
    {"AV-09/CA_lb", "the program orders no sand or gravel"},
    {"AV-09/FA_lb", "the program orders no sand or gravel"},
    {"AV-09/CA_ton", "the program orders no sand or gravel"},
    {"AV-09/water_gal", "water by the sack of a site mix: the program's is by the bag"},
    {"AV-10", "moisture of aggregates: bagged mix is dry"},
    {"AV-11", "the program proportions no mixes: it takes bags as they come"},
    {"AV-13", "moisture of aggregates: bagged mix is dry"},
    {"AV-14/water_per_yd3", "water by the cubic yard: the program's is by the bag"},
    {"YD-02", "air content: bags do not state it"},
    {"WT-04", "the program gives no water-binder ratio"},
    {"AD-02", "doses by 100 lb of cement: the program's are by the bag"},
    {"AD-R1", "a limit for calcium chloride, which the job cannot name"},
    {"FP-03/arm", "the lever of the push is inside the pull on a screw, not a number of its own"},
    {"FP-05",
     "wall formulas by rate of rise are not used: the plan takes the full liquid head, "
     "which caps them all"},
    {"FP-06",
     "wall formulas by rate of rise are not used: the plan takes the full liquid head, "
     "which caps them all"},
    {"FP-07/K", "wall formulas by rate of rise are not used: the plan takes the full liquid head"},
    {"FP-07/Pmax",
     "wall formulas by rate of rise are not used: the plan takes the full liquid head"},
    {"FP-07/hydrostatic_depth",
     "wall formulas by rate of rise are not used: the plan takes the full liquid head"},
    {"FP-R1", "a rule for choosing the formula: the plan takes the full liquid head at any slump"},
    {"PC-01", "the program's strength in bending is EN 1992-1-1's, not 7.5 sqrt(fc)"},
    {"PC-02", "the program's strength in bending is EN 1992-1-1's, not 7.5 sqrt(fc)"},
    {"PC-03", "the program's strength in bending is EN 1992-1-1's, not 7.5 sqrt(fc)"},
    {"PC-04", "the program's strength in bending is EN 1992-1-1's, not 7.5 sqrt(fc)"},
    {"PC-05", "the program works out no deflection of concrete and has no modulus for it"},
    {"PC-06", "the program's strength in bending is EN 1992-1-1's, not 0.62 sqrt(fc)"},
    {"PC-07/S", "the program's section is a length of edge, of which the stress is given"},
    {"PC-07/w", "the program's section is a length of edge, of which the stress is given"},
    {"PC-07/M_self", "the program's section is a length of edge, of which the stress is given"},
    {"PC-07/M_P", "the program's section is a length of edge, of which the stress is given"},
    {"PC-08",
     "strength design with load factors: the program screens stresses and designs nothing"},
    {"PC-09",
     "strength design with load factors: the program screens stresses and designs nothing"},
    {"PC-R1",
     "strength design with load factors: the program screens stresses and designs nothing"},
    {"EV-R1/limit_US", "the paired limit is rounded: 0.2 lb/ft2/h is 0.98 kg/m2/h"},
    {"SL-R1/k_low_slump", "for stiff mixes: the bag's water makes none"},
    {"SL-R2/preferred", "a wish, not a limit: the program cuts at the limit"},
    {"SL-06", "jobs give falls in percent"},
    {"CU-R2", "cements by type: a bag does not say"},
    {"CU-R3", "cements by type: a bag does not say"},
    {"CU-R4/high_early", "cements by type: a bag does not say"},
    {"CU-R4/T_min", "the wet cure is not judged by temperature"},
    {"CU-R5/ambient_C", "the paired value is rounded: 40 F is 4.4 C"},
    {"CU-R6", "how fast a slab cools after its cover comes off is not planned"},
    {"CU-R7", "slabs under 12 in are held to the mix's 10 C: the stricter rows are for frost"},
    {"CU-R8", "slabs under 12 in are held to the mix's 10 C: the stricter rows are for frost"},
    {"CU-R9", "slabs under 12 in are held to the mix's 10 C: the stricter rows are for frost"},
    {"CU-R10", "slabs under 12 in are held to the mix's 10 C: the stricter rows are for frost"},
    {"CU-R11", "how fast a slab cools after its cover comes off is not planned"},
    {"CU-R12/T_C", "the paired value is rounded: 40 F is 4.4 C"},
    {"CU-R12/days", "weather of several days: the program has the air of one day and its night"},
    {"CU-R12/f_before_freeze",
     "forms that it can freeze in stay until 5 MPa, which is stricter than 500 psi"},
    {"SL-R4", "tolerances of built slabs: the program plans and does not accept"},
    {"SL-R5", "tolerances of built slabs: the program plans and does not accept"},
    {"SL-R6", "toppings on a slab: the program's slabs lie on a base or on the ground"},
    {"LU-16", "the program has no nominal sizes: boards are given as they measure"},
    {"PN-R1/backer", "the catalogue ships two of the three sizes"},
    {"PN-R2", "the catalogue's screws are by the area, not by their spacing"},
    {"SA-R1", "air is not measured: the plan names the limit in words"},
    {"SA-01", "air is not measured: no average over a shift is worked out"},
    {"SA-02", "air is not measured: no average over a shift is worked out"},
    {"SA-03", "dust collectors are not sized"},
    {"SA-04", "dust collectors are not sized"},
    {"SA-R2", "respirators are left to the safety data sheet"},
    {"SA-R3", "respirators are left to the safety data sheet"},
    {"SA-R4", "a reading of the table, in words: the plan says so in the words of its check"},
    {"SA-R5", "a property of cement, in words: the plan says so in the words of its check"},
    {"BG-01/yield", "no such bag in the catalogue"},
    {"BG-02/yield", "no such bag in the catalogue"},
    {"BG-03/yield", "no such bag in the catalogue"},
    {"BG-04/yield", "no such bag in the catalogue"},
    {"BG-05/yield", "no such bag in the catalogue"},
    {"BG-R1/w", "a unit weight: the plan takes the bag's own"},
    {"WS-R1/large", "pours of over 200 yd3 are not planned"},
    {"WS-R2", "other kinds of building work"},
    {"WS-02", "what one pour wasted, after the event"},
    {"PL-R1", "vibrators are not planned"},
    {"PL-R2", "in words: the plan's trowel window begins when the working time is over"},
    {"PL-R3", "in words: bleed water is seen, not planned"},
    {"PL-R4", "vibrators are not planned"},
    {"GE-14", "no job has an ellipse"},
    {"GE-17", "jobs give a radius, not a rise over a chord"},
    {"TV-04", "no part of a slab is a square frustum; a bucket is a round one"},
};

}  // namespace

const std::map<std::string, std::string, std::less<>>& set_aside() {
  static const std::map<std::string, std::string, std::less<>> all = [] {
    std::map<std::string, std::string, std::less<>> list;
    const auto take = [&](const auto& rows) {
      for (const Aside& row : rows) list.emplace(row.id, row.reason);
    };
    take(misprints);
    take(differ);
    take(no_such_number);
    for (int i = 1; i <= 15; ++i) {
      list.emplace("LU-" + std::string(i < 10 ? "0" : "") + std::to_string(i),
                   "the program has no nominal sizes: boards are given as they measure");
    }
    return list;
  }();
  return all;
}

}  // namespace strikeoff::test
