// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/pour_log.h"
#include "strikeoff/resume.h"
#include "support/read.h"

namespace strikeoff::test {

/// 2000 x 600 x 40 mm are 48 L: four bags of 12 L with 4 L of water each. A batch takes 3 + 0.5 +
/// 0.5 + 3 = 7 min from its water until it is placed, and there is one every 1 + 3 + 0.5 + 0.5 = 5
/// min: water at 0, 5, 10 and 15, placed at 7, 12, 17 and 22. A joint may wait 0.6 x 25 = 15 min;
/// planned are 12. Joints are 600 mm long, 500 mm apart.
inline Job a_job_underway() {
  return job_of(R"({
    "name": "hearth", "units": "metric",
    "slabs": [{"name": "hearth", "thickness": "40 mm", "panel": "none",
               "base": {"rectangle": {"length": "2000 mm", "depth": "600 mm"}}}],
    "mix": {"name": "test mix", "bag": "25 kg", "yield": "12 L", "yield_water": "4 L",
            "water": {"least": "3.5 L", "most": "4.5 L", "use": "4 L"},
            "working_time": "25 min", "at": "20 C", "least_thickness": "10 mm",
            "aggregate": "2 mm"},
    "waste": "0 %", "spare_bags": 1,
    "crew": {"mixers": 1, "mixing": 1, "carrying": 1, "placing": 1, "finishing": 1,
             "times_per": "batch",
             "times": {"load": "1 min", "mix": "3 min", "discharge": "0.5 min",
                       "reset": "0.5 min", "carry": "0.5 min", "return": "0.5 min",
                       "place": "3 min"}},
    "site": {"air": "20 C", "bag_temperature": "20 C", "water_temperature": "20 C"},
    "limits": {"margin": "0 min"}
  })");
}

/// Minutes of contact and placed; placed 0: not yet.
struct Logged {
  double contact = 0, placed = 0;
};

inline PourLog a_log(double now, const std::vector<Logged>& batches) {
  PourLog log;
  log.now = minutes(now);
  for (const Logged& entry : batches) {
    LoggedBatch batch;
    batch.number = static_cast<int>(log.batches.size()) + 1;
    batch.contact = minutes(entry.contact);
    if (entry.placed > 0) batch.placed = minutes(entry.placed);
    log.batches.push_back(batch);
  }
  return log;
}

inline Resume the_rest(const PourLog& log) {
  return resume(a_job_underway(), shipped_catalogue(), log);
}

}  // namespace strikeoff::test
