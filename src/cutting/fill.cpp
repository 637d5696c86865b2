// SPDX-License-Identifier: MIT
#include "cutting/fill.h"

namespace strikeoff {
namespace {

/// Depth-first search for the subset of the free sizes that leaves least room.
class Fullest {
 public:
  explicit Fullest(const std::vector<Length>& sizes) : sizes_(sizes) {}

  [[nodiscard]] std::vector<std::size_t> find(const std::vector<std::size_t>& free, Length room) {
    free_ = &free;
    chosen_.clear();
    best_.clear();
    least_ = room;
    steps_ = 0;
    extend(0, room);
    return best_;
  }

 private:
  void extend(std::size_t from, Length room) {
    if (room < least_) {
      least_ = room;
      best_ = chosen_;
    }
    for (std::size_t i = from; i < free_->size(); ++i) {
      if (least_ == Length{} || ++steps_ > most_steps) return;
      const Length size = sizes_[(*free_)[i]];
      if (size > room) continue;
      chosen_.push_back((*free_)[i]);
      extend(i + 1, room - size);
      chosen_.pop_back();
      // An equal size in its place would only repeat the search.
      while (i + 1 < free_->size() && sizes_[(*free_)[i + 1]] == size) ++i;
    }
  }

  static constexpr int most_steps = 2000;
  const std::vector<Length>& sizes_;
  const std::vector<std::size_t>* free_ = nullptr;
  std::vector<std::size_t> chosen_, best_;
  Length least_;
  int steps_ = 0;
};

}  // namespace

std::vector<std::vector<std::size_t>> fill_bins(const std::vector<Length>& sizes, Length capacity) {
  std::vector<std::size_t> free;
  for (std::size_t i = 0; i < sizes.size(); ++i) free.push_back(i);
  std::vector<std::vector<std::size_t>> bins;
  Fullest fullest(sizes);
  while (!free.empty()) {
    const std::size_t largest = free.front();
    free.erase(free.begin());
    std::vector<std::size_t>& bin = bins.emplace_back(1, largest);
    const auto more = fullest.find(free, capacity - sizes[largest]);
    bin.insert(bin.end(), more.begin(), more.end());
    std::size_t next = 0;  // `more` rises like `free`
    std::erase_if(free, [&](std::size_t i) {
      if (next == more.size() || more[next] != i) return false;
      ++next;
      return true;
    });
  }
  return bins;
}

}  // namespace strikeoff
