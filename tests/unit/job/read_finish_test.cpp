// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include <algorithm>

#include "strikeoff/read_job.h"

using namespace strikeoff;

namespace {

Job job_with(const std::string& finish, const std::string& slab = "") {
  const std::string text = R"({"slabs": [{"base": {"rectangle": {"length": "2 m", "depth": "1 m"}},
 "thickness": "40 mm", )" + (slab.empty() ? R"("overhang": "20 mm")" : slab) +
                           R"(}], "mix": "rapid-fine-48lb")" +
                           (finish.empty() ? "" : ", \"finish\": " + finish) + "}";
  const ReadResult result = read_job(text);
  REQUIRE(result.job);
  return *result.job;
}

std::string assumed(const Job& job, const std::string& path) {
  const auto found = std::find_if(job.assumptions.begin(), job.assumptions.end(),
                                  [&](const Assumption& a) { return a.path == path; });
  return found == job.assumptions.end() ? "" : found->value;
}

}  // namespace

TEST_CASE("a job that says nothing is sanded and sealed as is usual", "[job]") {
  const Job job = job_with("");
  CHECK(job.finish.grits == std::vector<int>{100, 200, 400});
  CHECK(job.finish.fill_pits);
  REQUIRE(job.finish.sealer);
  CHECK(job.finish.sealer->id == "penetrating-sealer");
  CHECK(job.finish.sealer->coats == 2);
  CHECK(assumed(job, "/finish/grits") == "100, 200, 400");
  CHECK(assumed(job, "/finish/fill_pits") == "yes");
  CHECK(assumed(job, "/finish/sealer") == "penetrating sealer, 2 coats");
}

TEST_CASE("a slab on the ground is not sealed unless the job says so", "[job]") {
  const std::string ground = R"("support": "ground")";
  CHECK_FALSE(job_with("", ground).finish.sealer);
  CHECK(assumed(job_with("", ground), "/finish/sealer") == "none");
  CHECK(job_with(R"({"sealer": "film-sealer"})", ground).finish.sealer->coats == 3);
}

TEST_CASE("what the job says of its finish is no assumption", "[job]") {
  const Job job = job_with(R"({"grits": [80, 120], "fill_pits": false, "sealer": "none"})");
  CHECK(job.finish.grits == std::vector<int>{80, 120});
  CHECK_FALSE(job.finish.fill_pits);
  CHECK_FALSE(job.finish.sealer);
  for (const char* path : {"/finish/grits", "/finish/fill_pits", "/finish/sealer"}) {
    CHECK(assumed(job, path).empty());
  }
}

TEST_CASE("what is not sanded has no pits filled unless the job says so", "[job]") {
  for (const char* none : {R"({"grits": "none"})", R"({"grits": []})"}) {
    const Job job = job_with(none);
    CHECK(job.finish.grits.empty());
    CHECK_FALSE(job.finish.fill_pits);
    CHECK(assumed(job, "/finish/fill_pits").empty());
  }
  CHECK(job_with(R"({"grits": "none", "fill_pits": true})").finish.fill_pits);
}

TEST_CASE("a sealer is read as its label states it", "[job]") {
  const Job job = job_with(
      R"({"sealer": {"name": "oil", "coats": 3, "covers": "100 ft2", "pack": "1 qt",
 "recoat": "12 h", "price": 20}})");
  const Sealer& oil = *job.finish.sealer;
  CHECK((oil.name == "oil" && oil.coats == 3 && oil.price == 20.0));
  CHECK(in_square_feet(oil.covers) == Approx(100));
  CHECK(in_quarts(oil.pack) == Approx(1));
  CHECK(in_hours(*oil.recoat) == Approx(12));
  CHECK(assumed(job, "/finish/sealer/coats").empty());
  const Job short_label =
      job_with(R"({"sealer": {"name": "oil", "covers": "9 m2", "pack": "1 L"}})");
  CHECK(short_label.finish.sealer->coats == 2);
  CHECK(assumed(short_label, "/finish/sealer/coats") == "2");
  CHECK_FALSE(short_label.finish.sealer->recoat);
}
