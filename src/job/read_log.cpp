// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "core/ascii.h"
#include "core/format.h"
#include "core/outlines.h"
#include "embedded.h"
#include "job/read_parts.h"
#include "job/suggest.h"
#include "strikeoff/pour_log.h"

namespace strikeoff {
namespace {

constexpr Range<Duration> of_the_pour{Duration{}, hours(48), "0 min and 48 h"};
constexpr Range<int> batch_number{1, 1000, "1 and 1000"};
constexpr Range<double> some_bags{0.01, 1000, "0.01 and 1000"};
constexpr Range<double> bags_left{0, 100000, "0 and 100000"};
constexpr Range<Volume> batch_water{litres(0.01), litres(5000), "10 mL and 5000 L (1300 gal)"};
constexpr Range<Length> form_depth{Length::mm(1), Length::m(2), "1 mm (1/16 in) and 2 m (79 in)"};
/// A tape held at the form reads a little past the slab. Assumption.
constexpr Length past_the_edge = Length::mm(50);
/// A base may lie so much lower in places. Assumption.
constexpr Length unevenness = Length::mm(100);
constexpr double one_day = 86400;

/// "10:42", "9:05" or "10:42:30" as time after midnight.
std::optional<Duration> clock_to_the_second(std::string_view text) {
  int parts[3] = {0, 0, 0};
  std::size_t count = 0;
  for (std::size_t i = 0; i < text.size(); ++i, ++count) {
    if (count == 3) return std::nullopt;
    std::size_t digits = 0;
    for (; i < text.size() && is_digit(text[i]); ++i, ++digits) {
      if (digits == 2) return std::nullopt;
      parts[count] = parts[count] * 10 + (text[i] - '0');
    }
    const bool is_last = i == text.size();
    if (digits == 0 || (count > 0 && digits != 2) || (!is_last && text[i] != ':')) {
      return std::nullopt;
    }
  }
  if (count < 2 || text.back() == ':' || parts[0] > 23 || parts[1] > 59 || parts[2] > 59) {
    return std::nullopt;
  }
  return seconds(parts[0] * 3600 + parts[1] * 60 + parts[2]);
}

class LogReader {
 public:
  LogReader(Reader& reader, const Job& job) : reader_(reader), job_(job) {}

  PourLog read() {
    Object o(reader_, reader_.root(), "the log");
    PourLog log;
    if (!o.is_object()) return log;
    read_format(o.find("format"));
    read_first_contact(o.find("first_contact"));
    log.first_contact = first_contact_;
    const Node now = o.find("now");
    const std::optional<Duration> given_now = read_time(now);
    const Node batches =
        o.need("batches", R"("batches": [{"number": 1, "contact": "0 min", "placed": "9 min"}])");
    log.batches = read_batches(batches);
    read_depths(o.find("depths"), log.depths);
    log.mix_temperature = o.quantity("mix_temperature", any_temperature);
    log.air = o.quantity("air", any_temperature);
    log.working_time = o.quantity("working_time", long_time);
    log.bags_left = o.number("bags_left", bags_left);
    o.finish();
    if (reader_.errors() == 0) log.now = check_now(log.batches, now, given_now);
    return log;
  }

 private:
  void read_format(const Node& node) {
    const auto format = read_text(reader_, node);
    if (!format || *format == "strikeoff-log/1") return;
    reader_.error(node.pointer, {"unknown-format",
                                 fmt::format("this program reads \"strikeoff-log/1\", the file "
                                             "says {}",
                                             in_quotes(*format)),
                                 ""});
  }

  void not_a_clock(const Node& node, const std::string& text) {
    reader_.error(node.pointer, {"not-a-time", in_quotes(text) + " is not a time of day",
                                 "write hours and minutes: \"10:42\""});
  }

  void read_first_contact(const Node& node) {
    if (job_.date) first_contact_ = job_.date->time;
    const auto text = read_text(reader_, node);
    if (!text) return;
    const auto time = clock_to_the_second(*text);
    if (!time) return not_a_clock(node, *text);
    const int whole_minutes = static_cast<int>(in_minutes(*time));
    first_contact_ = std::chrono::minutes(whole_minutes);
    if (minutes(whole_minutes) != *time) not_a_clock(node, *text);
  }

  /// Minutes on the stopwatch, or a time of day after the first contact.
  std::optional<Duration> read_time(const Node& node) {
    const bool is_clock = node.text() && node.text()->find(':') != std::string::npos;
    if (!is_clock) return read_quantity(reader_, node, of_the_pour);
    const auto text = read_text(reader_, node);
    if (!text) return std::nullopt;
    const auto time = clock_to_the_second(*text);
    if (!time) {
      not_a_clock(node, *text);
      return std::nullopt;
    }
    if (!first_contact_) {
      reader_.error(node.pointer,
                    {"no-first-contact", "when the pour began is not known",
                     "add \"first_contact\": \"10:05\", or write minutes after it: \"47 min\""});
      return std::nullopt;
    }
    const double after = time->si() - static_cast<double>(first_contact_->count()) * 60;
    return seconds(after < 0 ? after + one_day : after);
  }

  std::optional<LoggedBatch> read_batch(const Node& node, std::size_t index) {
    const std::size_t before = reader_.errors();
    Object o(reader_, node, "a batch");
    LoggedBatch batch;
    batch.number = o.count("number", batch_number).value_or(static_cast<int>(index) + 1);
    const auto contact = read_time(o.need("contact", R"({"contact": "5 min"})"));
    batch.placed = read_time(o.find("placed"));
    batch.water = o.quantity("water", batch_water);
    batch.bags = o.number("bags", some_bags);
    o.finish();
    if (!contact || reader_.errors() != before) return std::nullopt;
    batch.contact = *contact;
    if (batch.placed && *batch.placed <= batch.contact) {
      reader_.error(o.path("placed"),
                    {"placed-before-contact",
                     fmt::format("batch {} was placed at {}, no later than its water at {}",
                                 batch.number, show(*batch.placed), show(batch.contact)),
                     "\"contact\" is when water met cement, \"placed\" when the batch lay in the "
                     "form"});
    }
    return batch;
  }

  struct Entry {
    LoggedBatch batch;
    std::string pointer;
  };

  std::vector<LoggedBatch> read_batches(const Node& node) {
    const auto nodes = read_list(reader_, node, "batches");
    if (!nodes) return {};
    if (nodes->empty()) {
      reader_.error(node.pointer,
                    {"no-batches", "nothing has been poured yet", "before it: strikeoff plan"});
    }
    const std::size_t before = reader_.errors();
    std::vector<Entry> entries;
    for (std::size_t i = 0; i < nodes->size(); ++i) {
      if (auto batch = read_batch((*nodes)[i], i)) entries.push_back({*batch, (*nodes)[i].pointer});
    }
    if (reader_.errors() != before) return {};
    std::stable_sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
      return a.batch.number < b.batch.number;
    });
    if (numbers_are_whole(node, entries)) check_order(entries);
    std::vector<LoggedBatch> batches;
    for (const Entry& entry : entries) batches.push_back(entry.batch);
    return batches;
  }

  bool numbers_are_whole(const Node& node, const std::vector<Entry>& entries) {
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const int number = entries[i].batch.number, expected = static_cast<int>(i) + 1;
      if (number == expected) continue;
      if (number < expected) {
        reader_.error(pointer_to(entries[i].pointer, "number"),
                      {"batch-twice", fmt::format("batch {} is in the log twice", number),
                       "give each batch its own number, or leave the numbers out: the list is then "
                       "in their order"});
      } else {
        reader_.error(node.pointer,
                      {"batch-missing", fmt::format("batch {} is not in the log", expected),
                       "every batch that has got its water belongs in it"},
                      Reader::Mark::key);
      }
      return false;
    }
    return true;
  }

  void check_order(const std::vector<Entry>& entries) {
    for (std::size_t i = 1; i < entries.size(); ++i) {
      const LoggedBatch &a = entries[i - 1].batch, &b = entries[i].batch;
      if (b.contact < a.contact) {
        reader_.error(pointer_to(entries[i].pointer, "contact"),
                      {"out-of-order",
                       fmt::format("batch {} got its water at {}, before batch {} at {}", b.number,
                                   show(b.contact), a.number, show(a.contact)),
                       "number the batches in the order in which they got their water"});
      }
      if (b.placed && !a.placed) {
        reader_.error(
            entries[i - 1].pointer,
            {"not-placed",
             fmt::format("batch {} is placed, but batch {} before it is not", b.number, a.number),
             "add its \"placed\""});
      }
    }
  }

  /// Without `now` it is when the last thing happened.
  Duration check_now(const std::vector<LoggedBatch>& batches, const Node& node,
                     std::optional<Duration> now) {
    Duration last;
    for (const LoggedBatch& batch : batches) {
      last = std::max({last, batch.contact, batch.placed.value_or(Duration{})});
    }
    if (now && *now < last) {
      reader_.error(node.pointer, {"in-the-future",
                                   fmt::format("now, at {}, something at {} has not happened yet",
                                               show(*now), show(last)),
                                   "\"now\" is not before any \"contact\" or \"placed\""});
    }
    return now.value_or(last);
  }

  std::string read_slab_name(Object& o) {
    const bool is_only = job_.slabs.size() == 1;
    const Node node = is_only ? o.find("slab") : o.need("slab", R"("slab": "table")");
    if (!node && is_only) return job_.slabs.front().name;
    const auto name = read_text(reader_, node);
    if (!name) return "";
    std::vector<std::string> known;
    for (const Slab& slab : job_.slabs) {
      if (slab.name == *name) return *name;
      known.push_back(slab.name);
    }
    reader_.error(node.pointer,
                  {"unknown-slab", fmt::format("the job has no slab named {}", in_quotes(*name)),
                   did_you_mean(*name, known, "it has " + quoted_list(known))});
    return "";
  }

  void read_depths(const Node& node, std::vector<DepthReading>& depths) {
    const auto nodes = read_list(reader_, node, "measured depths");
    if (!nodes) return;
    for (const Node& entry : *nodes) {
      constexpr auto example = R"({"at": ["12 in", "6 in"], "depth": "1 5/8 in"})";
      Object o(reader_, entry, "a measured depth");
      const std::string slab = read_slab_name(o);
      const Node at_node = o.need("at", example);
      const auto at = at_node ? read_point(reader_, at_node) : std::nullopt;
      const auto depth = read_quantity(reader_, o.need("depth", example), form_depth);
      o.finish();
      if (slab.empty() || !at || !depth) continue;
      check_reading(entry.pointer, {slab, *at, *depth});
      depths.push_back({slab, *at, *depth});
    }
  }

  void check_reading(const std::string& pointer, const DepthReading& reading) {
    const auto slab = std::find_if(job_.slabs.begin(), job_.slabs.end(),
                                   [&](const Slab& each) { return each.name == reading.slab; });
    const Polygon outline = sharp_outline(*slab);
    if (!contains(outline, reading.at) && distance(reading.at, outline) > past_the_edge) {
      reader_.error(pointer_to(pointer, "at"),
                    {"outside-the-slab", "this place lies outside the slab",
                     "\"at\" is measured as the base's corners are: look at the units"});
    }
    if (reading.depth > 3 * slab->thickness + unevenness) {
      reader_.error(
          pointer_to(pointer, "depth"),
          {"too-deep",
           fmt::format("a slab {} thick cannot be {} deep here", show(slab->thickness, job_.units),
                       show(reading.depth, job_.units)),
           "look at the unit; it is measured from the top of the form straight down"});
    }
  }

  Reader& reader_;
  const Job& job_;
  std::optional<std::chrono::minutes> first_contact_;
};

}  // namespace

LogResult read_log(std::string_view text, const Job& job) {
  JsonResult read = read_json(text);
  if (!read.json) return {std::nullopt, std::move(read.diagnostics)};
  Reader reader(*read.json);
  PourLog log = LogReader(reader, job).read();
  auto problems = reader.diagnostics(std::move(read.diagnostics));
  if (!problems.empty()) return {std::nullopt, std::move(problems)};
  return {std::move(log), {}};
}

std::string_view log_schema() {
  return embedded::log_schema();
}

}  // namespace strikeoff
