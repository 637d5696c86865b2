// SPDX-License-Identifier: MIT
#include "basis/basis.h"

namespace strikeoff {
namespace {

const BasisEntry hardening_entries[] = {
    {"air-cycle",
     "/hardening/coldest_c /hardening/warmest_c /hardening/mean_c",
     "the air at each full hour of a day and a night: from the job's hours, with straight "
     "lines between them; else from its air, taken at 15:00, and its night, taken at "
     "05:00, half a cosine each way; else its air all day long",
     "",
     {},
     "",
     Known::assumption},
    {"slowing",
     "/hardening/slowing /checks/cold-cure/value /checks/cold-cure/limit",
     "24 h over what a day and a night are worth at the label's temperature, hour by hour: "
     "the slower of Arrhenius, exp(-Ea/R (1/T - 1/Tlabel)) with T in K and R = 8.314, and "
     "Nurse-Saul, (T - 0 C) / (Tlabel - 0 C); nothing at or below 0 C, and never faster "
     "than the label; Ea as the job says, else 40 kJ/mol (30 to 55 are found); limit 1.5, "
     "and ordinary cement counts no time under 10 C (ACI 347)",
     "",
     {},
     "ASTM C1074, 6.2 and 6.3, equivalent age and maturity",
     Known::recalled},
    {"strength-curve",
     "/hardening/ultimate_mpa /hardening/strength/*/age_h /hardening/strength/*/equivalent_h "
     "/hardening/strength/*/strength_mpa /hardening/expected/*/age_h "
     "/hardening/expected/*/equivalent_h /hardening/expected/*/strength_mpa",
     "an estimate from the strengths on the bag, in the age at the label's temperature: "
     "S = Su k (t - t0) / (1 + k (t - t0)) through two points, t0 the label's final set, "
     "else its working time; through more, that or S = Su exp(-(theta/t)^a), whichever "
     "misses them less in least squares; never past the bag's last age, and where no curve "
     "rises through them only the points count",
     "",
     {},
     "ASTM C1074, annex (hyperbola); Freiesleben Hansen and Pedersen 1977 (exponential)",
     Known::recalled},
    {"label-time",
     "/hardening/milestones/*/label_h",
     "the bag's time from the end of the pour, in today's air, later by what the retarder "
     "adds to the working time; a day starts at noon where the job has no start time; of "
     "props under ordinary cement 7 d, ACI 347's times for soffits, else the full use",
     "",
     {},
     "the bag, as the job has it",
     Known::definition},
    {"strip-strength",
     "/hardening/milestones/strip/strength_mpa",
     "side strips come off concrete of 2 MPa without harm; 5 MPa where it can freeze",
     "",
     {},
     "C&CA 42.505, 1975 (2 MPa, read in a page that quotes it); CIRIA 136 (5 MPa, from "
     "memory)",
     Known::second_hand},
    {"soffit-strength",
     "/hardening/milestones/props/strength_mpa /checks/strength/limit",
     "soffits stay carried until 10 MPa",
     "",
     {},
     "CIRIA 136",
     Known::recalled},
    {"use-strength",
     "/hardening/milestones/*/strength_mpa",
     "light use from 10 MPa, full use from 20 MPa",
     "",
     {},
     "",
     Known::assumption},
    {"strong-time",
     "/hardening/milestones/*/strong_h",
     "when the strength curve reaches what the step needs, in today's air",
     "",
     {},
     "",
     Known::definition},
    {"milestone",
     "/hardening/milestones/*/from_h",
     "the later of the bag's time and of the strength it needs",
     "max(label, strong)",
     {{"label", "plan:/hardening/milestones/*/label_h"},
      {"strong", "plan:/hardening/milestones/*/strong_h"}},
     "",
     Known::definition},
    {"ready-by",
     "/checks/ready-by/value /checks/ready-by/limit",
     "days from the first water to the first full use, the last step of the schedule; "
     "limit: to the day and time of ready_by, its midnight without a time; the pour begins "
     "at noon where the job has no start time",
     "",
     {},
     "",
     Known::definition},
};

}  // namespace

std::span<const BasisEntry> hardening_basis() {
  return hardening_entries;
}

}  // namespace strikeoff
