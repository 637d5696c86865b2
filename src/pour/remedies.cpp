// SPDX-License-Identifier: MIT
#include "pour/remedies.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

#include "core/format.h"
#include "mix/fresh_mix.h"
#include "mix/mix.h"
#include "pour/search.h"
#include "pour/sentences.h"
#include "pour/stop_end.h"

namespace strikeoff {
namespace {

constexpr std::size_t most_remedies = 6;

/// How much trouble a change is, where nothing has a price.
enum class Trouble { share, water, ice, buy, mixer, person, hurry, stop };

struct Ranked {
  Remedy remedy;
  Trouble trouble = Trouble::share;
};

std::optional<double> price_of(const Job& job, const std::string& name, const std::string& id,
                               const std::optional<double>& label) {
  for (const std::string& key : {name, id}) {
    if (const auto own = job.prices.find(key); own != job.prices.end()) return own->second;
  }
  return label;
}

class Remedies {
 public:
  Remedies(const Job& job, const PourModel& model)
      : job_(job), model_(model), setup_(setup_of(job)), now_(model.exact(setup_)) {}

  [[nodiscard]] const Outlook& now() const { return now_; }

  void share_otherwise() {
    People best;
    Duration takt = now_.pace.takt;
    for (People& people : consecutive_crews(pouring())) {
      Setup setup = setup_;
      setup.crew.people = people;
      const Duration with = pace(setup.crew).takt;
      if (with >= takt - seconds(1)) continue;
      takt = with;
      best = std::move(people);
    }
    if (best.empty()) return;
    Setup setup = setup_;
    setup.crew.people = best;
    keep_if_better("Share the work otherwise: " + describe(best), setup, Trouble::share);
  }

  void other_batches() {
    std::optional<std::pair<Rank, double>> best;
    for (const double bags : bag_sizes(job_, model_.mix())) {
      if (bags == setup_.crew.bags_per_batch) continue;
      const Setup setup = with(bags);
      const Rank rank = rank_of(setup, model_.quick(setup), model_);
      if (!best || rank < best->first) best = {rank, bags};
    }
    if (!best) return;
    keep_if_better(fmt::format("Mix {} a batch instead of {}", bags_in_words(best->second),
                               in_quarters(setup_.crew.bags_per_batch)),
                   with(best->second), Trouble::buy);
  }

  /// Whole degrees of the job's units, no colder than the mix may be.
  void colder_water() {
    if (!lasts_too_short()) return;
    const double scale = job_.units == Units::us ? 1.8 : 1;
    const double offset = job_.units == Units::us ? 32 : 0;
    Setup setup = setup_, coldest = setup_;
    for (double degrees = std::floor(setup_.water.in_c() * scale + offset - 1e-9);; --degrees) {
      setup.water = Temperature::celsius((degrees - offset) / scale);
      if (setup.water < coldest_water || is_too_cold(setup)) break;
      coldest = setup;
      if (model_.judged(now_, model_.factor(setup)).works) break;
    }
    if (coldest.water == setup_.water) return;
    keep_if_better(fmt::format("Use water at {} instead of {}", show(coldest.water, job_.units),
                               show(setup_.water, job_.units)),
                   coldest, Trouble::water);
  }

  /// By tenths of a kilogram, up to a fifth of the water.
  void ice() {
    if (!lasts_too_short()) return;
    constexpr Mass step = kilograms(0.1);
    const Mass most = model_.mix().water_per_bag * water_density * most_ice;
    Setup setup = setup_, most_iced = setup_;
    for (setup.ice += step; setup.ice <= most && !is_too_cold(setup); setup.ice += step) {
      most_iced = setup;
      if (model_.judged(now_, model_.factor(setup)).works) break;
    }
    if (most_iced.ice == setup_.ice) return;
    keep_if_better(
        fmt::format("Make {} of each bag's water crushed ice", show(most_iced.ice, job_.units)),
        most_iced, Trouble::ice);
  }

  void more_retarder() {
    if (!lasts_too_short() || auto_retarder(job_) != nullptr) return;
    const auto fixed =
        std::find_if(job_.additives.begin(), job_.additives.end(),
                     [](const Additive& a) { return a.kind == AdditiveKind::retarder; });
    if (fixed == job_.additives.end()) {
      any_retarder();
    } else if (fixed->per_bag && (fixed->extends || !fixed->factors.empty())) {
      raise_dose(static_cast<std::size_t>(fixed - job_.additives.begin()));
    }
  }

  void more_hands() {
    std::optional<std::pair<Outlook, Role>> best;
    for (const Role role : {Role::mix, Role::carry, Role::place}) {
      const Outlook seen = model_.quick(with(role));
      if (!best || seen.slack > best->first.slack) best = {seen, role};
    }
    keep_if_better(std::string("One more person who ") + verb(best->second), with(best->second),
                   Trouble::person);
    Setup mixer = setup_, both = with(Role::mix);
    ++mixer.crew.mixers;
    ++both.crew.mixers;
    keep_if_better("One more mixer", mixer, Trouble::mixer);
    keep_if_better("One more mixer, and one more person who mixes", both, Trouble::person);
  }

  /// What either part of the longest wait must come down to.
  void hurry() {
    if (!lasts_too_short()) return;
    const Duration limit = *now_.usable - job_.limits.margin;
    const int gap = model_.zones(now_.batches, setup_).gap;
    const Duration lead = now_.pace.lead, takt = now_.pace.takt;
    // Only where the beat explains the wait.
    const Duration by_beat = edge_wait(gap, now_.pace);
    if (by_beat > now_.demand.wait + seconds(1) || by_beat < now_.demand.wait - seconds(1)) return;
    // Nobody mixes faster than the label asks.
    const Duration mixing = setup_.crew.times.mix.usual;
    const int mixers = std::min(setup_.crew.mixers, holders(setup_.crew.people, Role::mix));
    const Duration beat = gap == 0 ? takt : down_to_tenths((limit - lead) / gap);
    if (gap > 0 && beat > mixing / mixers) {
      add(fmt::format("Start a batch every {} instead of {}: speed up {}", show(beat), show(takt),
                      now_.pace.bottleneck),
          limit - beat * gap - lead);
    }
    const Duration way = down_to_tenths(limit - takt * gap);
    if (way > mixing && way < lead) {
      add(fmt::format("Bring a batch from water to placed in {} instead of {}", show(way),
                      show(lead)),
          limit - takt * gap - way);
    }
  }

  void end_with_a_board(const std::vector<Joint>& joints) {
    if (!lasts_too_short()) return;
    const auto stop = stop_end(joints, now_.batches, *now_.usable - job_.limits.margin);
    if (!stop || now_.demand.age > *now_.usable - job_.limits.margin) return;
    Remedy remedy;
    remedy.what = fmt::format(
        "Plan a joint after batch {}: have a stop-end board {} long ready{}, and pour the rest "
        "another day.",
        stop->after, show(stop->length, job_.units), where_is(stop->longest));
    remedy.works = !job_.crew.pour_within || now_.end <= *job_.crew.pour_within;
    remedy.margin = *now_.usable - std::max(stop->wait, now_.demand.age);
    found_.push_back({std::move(remedy), Trouble::stop});
  }

  [[nodiscard]] std::vector<Remedy> sorted() {
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Ranked& a, const Ranked& b) { return rank(a) < rank(b); });
    std::vector<Remedy> list;
    for (Ranked& found : found_) {
      if (list.size() < most_remedies) list.push_back(std::move(found.remedy));
    }
    return list;
  }

 private:
  static std::tuple<bool, Trouble, double> rank(const Ranked& found) {
    const auto& cost = found.remedy.cost;
    return {!found.remedy.works, found.trouble,
            cost ? cost->si() : std::numeric_limits<double>::infinity()};
  }

  static Duration down_to_tenths(Duration time) {
    return minutes(std::floor(in_minutes(time) * 10 + 1e-6) / 10);
  }

  static const char* verb(Role role) {
    return role == Role::mix ? "mixes" : role == Role::carry ? "carries" : "places";
  }

  [[nodiscard]] int pouring() const {
    return static_cast<int>(
        std::count_if(setup_.crew.people.begin(), setup_.crew.people.end(), [](const auto& roles) {
          return std::any_of(roles.begin(), roles.end(), [](Role r) { return r != Role::finish; });
        }));
  }

  [[nodiscard]] Setup with(double bags) const {
    Setup setup = setup_;
    setup.crew = with_bags(setup.crew, bags);
    return setup;
  }

  [[nodiscard]] Setup with(Role role) const {
    Setup setup = setup_;
    setup.crew.people.push_back({role});
    return setup;
  }

  [[nodiscard]] bool lasts_too_short() const { return !covers(*now_.usable, now_.demand); }

  [[nodiscard]] bool is_too_cold(const Setup& setup) const {
    return model_.mix_temperature(setup.water, setup.ice) < Temperature::celsius(10);
  }

  static Duration margin_of(const Outlook& seen) {
    return *seen.usable - std::max(seen.demand.wait, seen.demand.age);
  }

  /// What more bags and doses cost than today; nothing where one of them has no price.
  [[nodiscard]] std::optional<Money> cost_of(const Setup& setup, const Outlook& seen) const {
    const double bags = seen.batches * setup.crew.bags_per_batch;
    const double bags_now = now_.batches * setup_.crew.bags_per_batch;
    double cost = 0;
    if (const int more = whole_up(bags) - whole_up(bags_now); more != 0) {
      const auto price = price_of(job_, job_.mix.name, job_.mix.id, job_.mix.price);
      if (!price) return std::nullopt;
      cost += *price * more;
    }
    if (const Additive* retarder = auto_retarder(job_)) {
      const double more = seen.dose * bags - now_.dose * bags_now;
      const auto price = price_of(job_, retarder->name, retarder->id, retarder->price);
      if (std::abs(more) > 1e-9 && !price) return std::nullopt;
      if (price) cost += *price * more;
    }
    return Money::from_si(cost);
  }

  void keep_if_better(const std::string& what, const Setup& setup, Trouble trouble) {
    const Outlook seen = model_.exact(setup);
    if (!seen.works && seen.slack < now_.slack + seconds(6)) return;
    Remedy remedy;
    remedy.works = seen.works;
    remedy.margin = margin_of(seen);
    if (trouble <= Trouble::buy) remedy.cost = cost_of(setup, seen);
    remedy.what = what + outcome(seen);
    found_.push_back({std::move(remedy), trouble});
  }

  /// ": edges wait 9 min, and 12 min may be used."
  [[nodiscard]] std::string outcome(const Outlook& seen) const {
    if (!seen.works) return fmt::format(": {} short still.", show(-seen.slack));
    const Demand& d = seen.demand;
    std::string text = d.wait >= d.age ? "edges wait " + show(d.wait)
                                       : "a batch is " + show(d.age) + " old when it is placed";
    text += fmt::format(", and {} may be used", show(*seen.usable));
    if (seen.dose > 0) text += fmt::format(" with {} of retarder a bag", doses_in_words(seen.dose));
    return ": " + text + ".";
  }

  /// Without a retarder in the job: how much longer the mix has to last at its label's temperature.
  void any_retarder() {
    const Duration plain = *job_.mix.working_time;
    const Duration per_label = plain * (now_.demand.usable() / *now_.usable);
    const Duration longer = minutes(std::ceil(in_minutes(per_label - plain) - 1e-9));
    Remedy remedy;
    remedy.what =
        fmt::format("Add a retarder that keeps the mix workable {} longer at {}, by its own label.",
                    show(longer), show(job_.mix.at, job_.units));
    remedy.works = makes_time();
    remedy.margin =
        *now_.usable * ((plain + longer) / plain) - std::max(now_.demand.wait, now_.demand.age);
    found_.push_back({std::move(remedy), Trouble::buy});
  }

  void raise_dose(std::size_t index) {
    Job searched = job_;
    Additive& retarder = searched.additives[index];
    const double dose_now = *retarder.per_bag;
    retarder.per_bag.reset();
    const double factor = model_.factor(setup_);
    const double dose = least_dose(searched, *job_.mix.working_time, factor, now_.demand);
    if (dose <= dose_now) return;
    const Duration usable =
        retarded_by_all(searched, *job_.mix.working_time, dose) * (factor * job_.crew.usable);
    Remedy remedy;
    const bool enough = covers(usable, now_.demand);
    remedy.works = enough && makes_time();
    remedy.margin = usable - std::max(now_.demand.wait, now_.demand.age);
    remedy.what = fmt::format("{} of retarder a bag instead of {}: {} may be used{}.",
                              in_quarters(dose), in_quarters(dose_now), show(usable),
                              enough ? "" : ", and that is the most it may have");
    if (const auto price = price_of(job_, retarder.name, retarder.id, retarder.price)) {
      const double bags = now_.batches * setup_.crew.bags_per_batch;
      remedy.cost = Money::from_si((dose - dose_now) * bags * *price);
    }
    found_.push_back({std::move(remedy), Trouble::buy});
  }

  [[nodiscard]] bool makes_time() const {
    return !job_.crew.pour_within || now_.end <= *job_.crew.pour_within + minutes(1e-9);
  }

  void add(const std::string& what, Duration to_spare) {
    Remedy remedy;
    remedy.what = what + ".";
    remedy.works = makes_time();
    remedy.margin = to_spare + job_.limits.margin;
    found_.push_back({std::move(remedy), Trouble::hurry});
  }

  [[nodiscard]] std::string where_is(const Joint& joint) const {
    if (joint.ends.size() != 2) return "";
    const auto end = [&](const JointEnd& at) {
      return fmt::format("{}, {} from {}", the_side(at.on), show(at.away, job_.units),
                         the_side(at.from));
    };
    return fmt::format(", from {} to {}", end(joint.ends[0]), end(joint.ends[1]));
  }

  const Job& job_;
  const PourModel& model_;
  Setup setup_;
  Outlook now_;
  std::vector<Ranked> found_;
};

bool can_be_judged(const Outlook& now) {
  return now.usable && now.pace.missing.empty();
}

}  // namespace

std::vector<Remedy> remedies(const Job& job, const PourModel& model,
                             const std::vector<Joint>& joints) {
  Remedies all(job, model);
  if (!can_be_judged(all.now()) || all.now().works) return {};
  all.share_otherwise();
  all.other_batches();
  all.colder_water();
  all.ice();
  all.more_retarder();
  all.more_hands();
  all.hurry();
  all.end_with_a_board(joints);
  return all.sorted();
}

std::vector<Remedy> changes(const Job& job, const PourModel& model) {
  const Setup setup = setup_of(job);
  const Outlook now = model.exact(setup);
  if (!can_be_judged(now) || !now.works || now.batches < 2) return {};
  std::vector<Remedy> list;
  const auto ask = [&](const std::string& what, const Setup& other) {
    const Outlook seen = model.exact(other);
    const bool is_sooner = seen.end <= now.end - minutes(1);
    if (seen.demand.wait > now.demand.wait - seconds(6) && !is_sooner) return false;
    list.push_back({fmt::format("{}: edges wait {} instead of {}, and the last batch is placed "
                                "after {} instead of {}.",
                                what, show(seen.demand.wait), show(now.demand.wait), show(seen.end),
                                show(now.end)),
                    seen.works, *seen.usable - std::max(seen.demand.wait, seen.demand.age),
                    std::nullopt});
    return true;
  };
  const std::pair<Role, const char*> roles[] = {
      {Role::mix, "mixes"}, {Role::carry, "carries"}, {Role::place, "places"}};
  for (const auto& [role, verb] : roles) {
    Setup more = setup;
    more.crew.people.push_back({role});
    ask(fmt::format("One more person who {}", verb), more);
  }
  Setup mixer = setup;
  ++mixer.crew.mixers;
  if (!ask("One more mixer", mixer)) {
    mixer.crew.people.push_back({Role::mix});
    ask("One more mixer, and one more person who mixes", mixer);
  }
  return list;
}

}  // namespace strikeoff
