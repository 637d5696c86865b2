// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "render/json_parts.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using json::number;

void add(Json& object, const char* key, const std::optional<Duration>& time) {
  if (time) object[key] = number(in_minutes(*time));
}

Json line(const Joint& joint) {
  return {{"slab", joint.slab},
          {"length_mm", number(joint.length.in_mm())},
          {"line_mm", json::points_mm(joint.line)}};
}

Json open_joint(const OpenJoint& open) {
  Json result = {{"first", open.joint.first}, {"second", open.joint.second}};
  result.add(line(open.joint));
  result["wait_min"] = number(in_minutes(open.joint.wait));
  add(result, "meet_by_min", open.meet_by);
  add(result, "margin_min", open.margin);
  return result;
}

Json stop_end(const StopEnd& stop) {
  return {{"after", stop.after},
          {"reason", stop.reason},
          {"length_mm", number(stop.length.in_mm())},
          {"joints", json::array(stop.joints, line)},
          {"leaves_out", stop.leaves_out},
          {"is_for_bags", stop.is_for_bags}};
}

Json next(const NextBatch& next) {
  Json result = {{"number", next.number}, {"contact_min", number(in_minutes(next.contact))}};
  add(result, "latest_contact_min", next.latest_contact);
  return result;
}

}  // namespace

std::string render_json(const Resume& resume) {
  const Plan& rest = resume.rest;
  Json file = {{"format", "strikeoff-resume/1"},
               {"job", rest.name},
               {"now_min", number(in_minutes(resume.now))}};
  if (resume.first_contact) {
    file["first_contact"] = fmt::format("{:02}:{:02}", resume.first_contact->count() / 60,
                                        resume.first_contact->count() % 60);
  }
  file["begun"] = resume.begun;
  file["placed"] = resume.placed;
  file["filled_l"] = number(in_litres(resume.filled));
  file["left_l"] = number(in_litres(resume.left));
  file["bags"] = {{"used", number(resume.bags_used)},
                  {"needed", number(resume.bags_needed)},
                  {"left", number(resume.bags_left)},
                  {"left_is_known", resume.bags_left_is_known},
                  {"short", number(resume.bags_short)}};
  if (resume.next) file["next"] = next(*resume.next);
  add(file, "meet_by_min", resume.meet_by);
  if (resume.meet_by) file["meet_with"] = resume.meet_with;
  if (resume.stop_end) file["stop_end"] = stop_end(*resume.stop_end);
  file["in_hand"] = resume.in_hand;
  file["mix_temperature_c"] = number(rest.pour.mix_temperature.in_c());
  add(file, "working_time_min", rest.pour.working_time);
  add(file, "usable_min", rest.pour.usable);
  add(file, "margin_min", rest.pour.margin);
  if (!rest.batches.empty()) file["end_min"] = number(in_minutes(rest.pour.end));
  file["joints"] = json::array(resume.joints, open_joint);
  file["batches"] = json::array(rest.batches, json::batch);
  file["checks"] = json::array(rest.checks, json::check);
  return json_file(file);
}

}  // namespace strikeoff
