// SPDX-License-Identifier: MIT
#include "cutting/sheet_replay.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace strikeoff {
namespace {

bool differ(const Rectangle& a, const Rectangle& b) {
  return differs(a.at.x, b.at.x) || differs(a.at.y, b.at.y) || differs(a.length, b.length) ||
         differs(a.depth, b.depth);
}

/// A part cut off, and how.
struct Loose {
  std::string name;
  Rectangle at;
  int stage = 0;
  bool along_length = false;
};

class Replay {
 public:
  Replay(const Sheet& sheet, Length kerf) : sheet_(sheet), kerf_(kerf) {
    loose_.push_back({"", {{}, sheet.length, sheet.width}, 0, false});
    if (sheet.cuts.empty() && !sheet.pieces.empty()) loose_[0].name = sheet.pieces[0].mark;
  }

  std::vector<std::string> run() {
    for (std::size_t c = 0; c < sheet_.cuts.size() && report_.empty(); ++c) cut(c);
    finish();
    if (report_.empty()) compare();
    return std::move(report_);
  }

 private:
  /// Cuts on where the pass before stopped, or else another part of this name.
  void cut(std::size_t index) {
    const SheetCut& c = sheet_.cuts[index];
    if (!is_going_on(c)) {
      finish();
      if (!start(c)) return say("there is no " + (c.from.empty() ? "sheet" : c.from) + " to cut");
    }
    Loose off{c.off, open_->at, c.stage, c.along_length};
    Length& size = c.along_length ? off.at.depth : off.at.length;
    Length& left = c.along_length ? open_->at.depth : open_->at.length;
    Length& at = c.along_length ? open_->at.at.y : open_->at.at.x;
    if (c.fence <= Length{} || c.fence > left + cut_rounding) {
      return say(c.off + " is too wide to be cut off");
    }
    size = std::min(c.fence, left);
    at += size + kerf_;
    left = std::max(left - size - kerf_, Length{});
    loose_.push_back(off);
    if (c.rest.empty()) return;
    loose_.push_back({c.rest, open_->at, c.stage, c.along_length});
    open_.reset();
  }

  [[nodiscard]] bool is_going_on(const SheetCut& c) const {
    return open_ && open_->name == c.from && open_->stage == c.stage &&
           open_->along_length == c.along_length && loose_.back().name != c.from;
  }

  /// Takes up the first part of this name that is wider than the cut and not yet a piece.
  bool start(const SheetCut& c) {
    const auto part = std::find_if(loose_.begin(), loose_.end(), [&](const Loose& p) {
      const bool turned = p.stage == 0 || p.along_length != c.along_length;
      const Length width = c.along_length ? p.at.depth : p.at.length;
      return p.name == c.from && turned && p.stage + 1 == c.stage && c.stage <= 3 &&
             width > c.fence + cut_rounding && !is_piece(p);
    });
    if (part == loose_.end()) return false;
    open_ = *part;
    open_->stage = c.stage;
    open_->along_length = c.along_length;
    loose_.erase(part);
    return true;
  }

  /// Namesakes may still be too large.
  [[nodiscard]] bool is_piece(const Loose& part) const {
    return std::any_of(sheet_.pieces.begin(), sheet_.pieces.end(), [&](const SheetPiece& p) {
      return p.mark == part.name && !differ(p.at, part.at);
    });
  }

  /// What is left of the part being cut is left over.
  void finish() {
    if (open_) rests_.push_back(open_->at);
    open_.reset();
  }

  void compare() {
    for (const SheetPiece& piece : sheet_.pieces) {
      const auto made = std::find_if(loose_.begin(), loose_.end(), [&](const Loose& p) {
        return p.name == piece.mark && !differ(p.at, piece.at);
      });
      if (made == loose_.end()) {
        say("piece " + piece.mark + " is not where the cuts leave it");
      } else {
        loose_.erase(made);
      }
    }
    for (const Loose& part : loose_) say(part.name + " is cut but is no piece");
    for (const Rectangle& left : sheet_.left_over) {
      const auto rest = std::find_if(rests_.begin(), rests_.end(),
                                     [&](const Rectangle& r) { return !differ(r, left); });
      if (rest == rests_.end()) {
        say("a left-over of " + sheet_.stock + " is not left by the cuts");
      } else {
        rests_.erase(rest);
      }
    }
  }

  void say(std::string sentence) { report_.push_back(std::move(sentence)); }

  const Sheet& sheet_;
  Length kerf_;
  std::vector<Loose> loose_;
  std::optional<Loose> open_;  // the part being cut
  std::vector<Rectangle> rests_;
  std::vector<std::string> report_;
};

}  // namespace

std::vector<std::string> saw_violations(const Sheet& sheet, Length kerf) {
  return Replay(sheet, kerf).run();
}

}  // namespace strikeoff
