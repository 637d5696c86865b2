// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// The check of one gap, 400 mm long and this wide, in a base under two panels of 1000 x 600 mm
/// that meet at x = 1000 mm; or under none.
Check gap_check(double x, double width, bool panelled = true) {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  const auto mm = [](double v) { return Length::mm(v); };
  job.slabs.front().gaps = {{{mm(x), mm(100)}, mm(width), mm(400)}};
  SlabPlan& slab = plan.slabs.front();
  slab.panel.clear();
  slab.panels.clear();
  if (panelled) {
    slab.panel = corners_of({{}, mm(2000), mm(600)});
    slab.panels = {{"P1", {{}, mm(1000), mm(600)}}, {"P1", {{mm(1000), mm(0)}, mm(1000), mm(600)}}};
  }
  return find_check(panel_checks(job, plan), "base-gap");
}

}  // namespace

TEST_CASE("one panel bridges a gap of up to 150 mm", "[checks]") {
  CHECK(gap_check(300, 150).level == Level::ok);
  CHECK(gap_check(300, 150).value == 150.0);
  CHECK(gap_check(850, 150).level == Level::ok);  // it ends at the seam
  CHECK(gap_check(300, 151).level == Level::caution);
  CHECK(gap_check(300, 300).level == Level::caution);
  CHECK(gap_check(300, 301).level == Level::stop);
}

TEST_CASE("a seam over a gap wants a batten under it", "[checks]") {
  const Check check = gap_check(950, 100);
  CHECK(check.level == Level::caution);
  CHECK_THAT(check.advice, Catch::Matchers::Contains("batten under the seam"));
}

TEST_CASE("without a panel the mix falls through more than a slit", "[checks]") {
  CHECK(gap_check(300, 10, false).level == Level::ok);
  CHECK(gap_check(300, 11, false).level == Level::stop);
}

TEST_CASE("a seam over no partition and a seam through an opening are cautions", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  const auto level = [&] { return find_check(panel_checks(job, plan), "panel-seam").level; };
  FormQuantities& forms = plan.slabs.front().forms;
  forms.seams = Length::mm(600);
  forms.loose_seams = forms.split_seams = {};
  CHECK(panel_checks(job, plan).empty());  // nothing is known of partitions
  job.slabs.front().partitions = {{{Length::mm(500), {}}, {Length::mm(500), Length::mm(600)}}};
  CHECK(level() == Level::ok);
  forms.loose_seams = Length::mm(1);
  CHECK(level() == Level::caution);
  forms.loose_seams = {};
  forms.split_seams = Length::mm(1);
  CHECK(level() == Level::caution);
}
