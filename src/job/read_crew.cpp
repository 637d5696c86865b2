// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <utility>

#include "core/format.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<int> head_count{1, 100, "1 and 100"};
constexpr Range<double> batch_size{0.01, 1000, "0.01 and 1000"};
constexpr Range<Volume> capacity{litres(1), litres(5000), "1 L and 5000 L (1300 gal)"};
constexpr Range<Length> bucket_size{Length::mm(20), Length::m(3),
                                    "20 mm (3/4 in) and 3 m (118 in)"};
constexpr Range<Length> advance_length{Length::mm(10), Length::m(10), "10 mm (3/8 in) and 10 m"};
constexpr Range<Percent> share{{0.01}, {1}, "1 % and 100 %"};
constexpr Range<Duration> mixing_time{seconds(1), hours(24), "1 s and 24 h"};
constexpr std::size_t most_people = 100;
/// For who has fewer people than kinds of work.
constexpr auto shared_roles =
    R"(where one person does several things, name each person's: "roles": [["mix"], ["carry", "place", "finish"]])";

constexpr std::array<std::pair<const char*, Role>, 4> counted{{{"mixing", Role::mix},
                                                               {"carrying", Role::carry},
                                                               {"placing", Role::place},
                                                               {"finishing", Role::finish}}};

/// A number of people or mixers; 1 and `open` for "auto".
int read_head_count(Context& c, const Node& node, bool& open) {
  open = node.is("auto");
  if (open) return 1;
  if (node.text()) {
    wrong_kind(c.reader, node, "a plain number", "write it without quotes, or \"auto\"");
    return 1;
  }
  return read_count(c.reader, node, head_count).value_or(1);
}

struct Operation {
  const char* key;
  UsualBad Times::*time;
  double usual_min, bad_min;  // of one bag of 20 to 25 kg
  bool per_bag;               // grows with the bags of a batch
};

// Starting values for a crew without data; assumptions, from no source. A timed rehearsal of one
// batch replaces them.
constexpr std::array<Operation, 7> operations{{
    {"load", &Times::load, 1.0, 1.6, true},
    {"mix", &Times::mix, 3.0, 4.0, false},
    {"discharge", &Times::discharge, 0.5, 0.8, true},
    {"reset", &Times::reset, 0.5, 1.0, false},
    {"carry", &Times::carry, 0.5, 0.9, false},
    {"return", &Times::back, 0.5, 0.9, false},
    {"place", &Times::place, 3.0, 5.0, true},
}};

std::optional<std::vector<Role>> read_roles_of_one(Context& c, const Node& node) {
  const auto entries = read_list(c.reader, node, "roles");
  if (!entries) return std::nullopt;
  std::vector<Role> roles;
  for (const Node& entry : *entries) {
    const auto role = read_choice<Role>(c.reader, entry,
                                        {{"mix", Role::mix},
                                         {"carry", Role::carry},
                                         {"place", Role::place},
                                         {"finish", Role::finish}});
    if (!role) continue;
    if (std::find(roles.begin(), roles.end(), *role) == roles.end()) roles.push_back(*role);
  }
  if (entries->empty()) {
    c.reader.error(node.pointer,
                   {"no-roles", "this person has nothing to do", R"(as in ["carry", "place"])"});
  }
  std::sort(roles.begin(), roles.end());  // the order of the work
  return roles;
}

void check_every_role(Context& c, const Node& node, const std::vector<std::vector<Role>>& people) {
  for (const auto& [key, role] : counted) {
    const bool done = std::any_of(people.begin(), people.end(), [r = role](const auto& person) {
      return std::find(person.begin(), person.end(), r) != person.end();
    });
    if (done || role == Role::finish) continue;  // whoever is free finishes
    c.reader.error(node.pointer,
                   {"role-missing", fmt::format("nobody in this crew is {}", key),
                    R"(a person may have several roles: ["carry", "place"])"},
                   Reader::Mark::key);
    return;
  }
}

/// "roles": "auto" with "people": how they share the work is open.
void read_sharing(Context& c, Object& o, const Node& people, Crew& crew) {
  if (!people) {
    c.reader.error(o.path("roles"), {"missing-key", "\"roles\": \"auto\" needs the key \"people\"",
                                     R"(as in "people": 3, who share the work)"});
    return;
  }
  constexpr Range<int> who_share{1, 20, "1 and 20"};  // bounds the ways to share the work
  const int n = read_count(c.reader, people, who_share).value_or(1);
  crew.people.assign(static_cast<std::size_t>(n),
                     {Role::mix, Role::carry, Role::place, Role::finish});
}

void read_people(Context& c, Object& o, Crew& crew, Open& open) {
  const Node roles = o.find("roles"), people = o.find("people");
  const std::size_t before = c.reader.errors();
  for (const auto& [key, role] : counted) {
    const Node node = o.find(key);
    if (node && roles) {
      c.reader.error(node.pointer,
                     {"two-crews", fmt::format("\"{}\" and \"roles\" both say who works", key),
                      "keep one of them"},
                     Reader::Mark::key);
      return;
    }
    if (roles) continue;
    if (!node) {
      c.reader.assume(weight_crew, fmt::format("/crew/{}", key), "1", "people (assumption)");
    }
    if (node && node.json->number() == 0) {
      c.reader.error(node.pointer,
                     {"nobody", fmt::format("\"{}\" must be 1 at least, is 0", key), shared_roles});
      continue;
    }
    bool is_open = false;
    const int n = read_head_count(c, node, is_open);
    if (is_open) open.counted.push_back(role);
    crew.people.insert(crew.people.end(), static_cast<std::size_t>(n), {role});
  }
  open.sharing = roles.is("auto");
  if (open.sharing) {
    read_sharing(c, o, people, crew);
    return;
  }
  if (people) {
    c.reader.error(people.pointer,
                   {"two-crews", "\"people\" goes with \"roles\": \"auto\" only", shared_roles},
                   Reader::Mark::key);
  }
  if (const auto list = read_list(c.reader, roles, "people, each a list of roles")) {
    for (const Node& person : *list) {
      if (auto of_one = read_roles_of_one(c, person)) crew.people.push_back(std::move(*of_one));
    }
  }
  if (crew.people.size() > most_people) {
    c.reader.error(roles ? roles.pointer : o.pointer(),
                   {"out-of-range",
                    fmt::format("a crew of {} people; at most {} are planned", crew.people.size(),
                                most_people),
                    ""},
                   Reader::Mark::key);
  }
  if (roles && c.reader.errors() == before) check_every_role(c, roles, crew.people);
}

void read_bags_per_batch(Context& c, Object& o, Crew& crew, Open& open) {
  const Node node = o.find("bags_per_batch");
  if (!node) {
    c.reader.assume(weight_bags_per_batch, "/crew/bags_per_batch", "1", "bag a batch (assumption)");
  } else if (node.is("auto")) {
    open.bags_per_batch = true;
  } else if (node.text()) {
    wrong_kind(c.reader, node, "a plain number", "write it without quotes, or \"auto\"");
  } else {
    crew.bags_per_batch = read_number(c.reader, node, batch_size).value_or(1);
  }
}

/// One duration, or {usual, bad}; alone it stands for both.
std::optional<UsualBad> read_time(Context& c, const Node& node, const Range<Duration>& range) {
  if (!node) return std::nullopt;
  if (!node.json->object()) {
    const auto time = read_quantity(c.reader, node, range);
    return time ? std::optional(UsualBad{*time, *time}) : std::nullopt;
  }
  Object o(c.reader, node, "a time");
  const std::size_t before = c.reader.errors();
  const auto usual =
      read_quantity(c.reader, o.need("usual", R"({"usual": "3 min", "bad": "5 min"})"), range);
  const auto bad = o.quantity("bad", range);
  o.finish();
  if (!usual || c.reader.errors() != before) return std::nullopt;
  if (bad && *bad < *usual) {
    c.reader.error(o.path("bad"), {"bad-under-usual",
                                   fmt::format("the bad time, {}, is shorter than the usual, {}",
                                               show(*bad), show(*usual)),
                                   "swap the two"});
  }
  return UsualBad{*usual, bad.value_or(*usual)};
}

/// "mix 3 to 4".
std::string show_minutes(const char* key, const UsualBad& time) {
  return fmt::format("{} {} to {}", key, show_number(in_minutes(time.usual), 2),
                     show_number(in_minutes(time.bad), 2));
}

void read_times(Context& c, Object& crew_object, Crew& crew, bool any_batch) {
  const Node node = crew_object.find("times"), per = crew_object.find("times_per");
  const bool given_per_bag =
      read_choice<bool>(c.reader, per, {{"batch", false}, {"bag", true}}).value_or(false);
  Object o(c.reader, node, "the times");
  const double bags = crew.bags_per_batch;
  bool any_given = false, any_scaled = false;
  std::string assumed;
  for (const Operation& op : operations) {
    const Node value = o.find(op.key);
    const bool is_mix = op.time == &Times::mix;
    auto time = read_time(c, value, is_mix ? mixing_time : short_time);
    any_given = any_given || value;
    any_scaled = any_scaled || (value && op.per_bag);
    const bool scales = op.per_bag && (!value || given_per_bag);
    if (!time) time = UsualBad{minutes(op.usual_min), minutes(op.bad_min)};
    if (scales) time = UsualBad{time->usual * bags, time->bad * bags};
    crew.times.*op.time = *time;
    if (!value) assumed += (assumed.empty() ? "" : ", ") + show_minutes(op.key, *time);
  }
  o.finish();
  if (any_batch && any_scaled && !given_per_bag) {
    c.reader.error(node.pointer,
                   {"auto-without-times",
                    "\"bags_per_batch\": \"auto\" needs times of one bag, and these are of a batch",
                    R"(add "times_per": "bag": load, discharge and place then grow with the bags)"},
                   Reader::Mark::key);
  }
  if (!assumed.empty()) {
    c.reader.assume(weight_times, "/crew/times", assumed + " min",
                    "of one batch, as usual to when it goes badly: time one at a rehearsal "
                    "(assumption)");
  }
  if (any_given && !per) {
    c.reader.assume(weight_times, "/crew/times_per", "batch",
                    "the times given are those of one batch as it will be mixed (assumption)");
  }
}

void read_bucket(Context& c, const Node& node, Crew& crew) {
  if (!node) return;
  Object o(c.reader, node, "the bucket");
  constexpr auto example = R"({"bottom": "10 in", "top": "11 1/2 in", "height": "14 in"})";
  const auto size = [&](const char* key) {
    return read_quantity(c.reader, o.need(key, example), bucket_size).value_or(Length{});
  };
  crew.bucket = Bucket{size("bottom"), size("top"), size("height")};
  o.finish();
}

}  // namespace

Crew read_crew(Context& c, const Node& node, Open& open) {
  Object o(c.reader, node, "the crew");
  Crew crew;
  const Node mixers = o.find("mixers");
  if (!mixers) c.reader.assume(weight_crew, "/crew/mixers", "1", "drill or drum (assumption)");
  crew.mixers = read_head_count(c, mixers, open.mixers);
  read_people(c, o, crew, open);
  read_bags_per_batch(c, o, crew, open);
  crew.mixer_capacity = o.quantity("mixer_capacity", capacity);
  read_bucket(c, o.find("bucket"), crew);
  read_times(c, o, crew, open.bags_per_batch);
  const Node usable = o.find("usable");
  if (!usable) {
    c.reader.assume(weight_usable, "/crew/usable", show_percent(crew.usable),
                    "share of the working time in which a fresh edge still takes the next batch "
                    "(assumption)");
  }
  if (const auto given = read_quantity(c.reader, usable, share)) crew.usable = given->fraction;
  crew.pour_within = o.quantity("pour_within", long_time);
  const Node advance = o.find("least_advance");
  crew.least_advance = read_quantity(c.reader, advance, advance_length);
  if (!advance) {
    c.reader.assume(weight_least_advance, "/crew/least_advance", "2 x thickness, at least " +
                    show(Length::mm(150), c.units),
                    "how far a batch should move the front; a narrower ribbon across it is taken "
                    "where rows of cells would leave too little time (assumption)");
  }
  o.finish();
  return crew;
}

}  // namespace strikeoff
