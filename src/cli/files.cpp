// SPDX-License-Identifier: MIT
#include "cli/files.h"

#include <fcntl.h>
#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <deque>
#include <filesystem>
#include <istream>
#include <optional>
#include <ostream>

namespace strikeoff::cli {
namespace {

/// Reason of the last system call that failed: "no such file or directory".
std::string reason() {
  std::string text = std::strerror(errno);
  if (!text.empty() && text.size() > 1 && (text[1] & 0x20) != 0) {
    text[0] = static_cast<char>(text[0] | 0x20);
  }
  return text;
}

[[noreturn]] void fail(const std::string& what, const std::string& path, const std::string& why) {
  throw FileError(fmt::format("cannot {} \"{}\": {}", what, path, why));
}

/// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { close(); }
  [[nodiscard]] int get() const { return fd_; }
  [[nodiscard]] bool is_open() const { return fd_ >= 0; }
  /// False when the system reports that a write was lost.
  bool close() {
    const int fd = fd_;
    fd_ = -1;
    return fd < 0 || ::close(fd) == 0;
  }

 private:
  int fd_;
};

bool write_all(int fd, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(fd, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

void write_directly(const std::string& path, const std::string& text) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
  if (!file.is_open() || !write_all(file.get(), text) || !file.close()) {
    fail("write", path, reason());
  }
}

/// The file a symbolic link leads to, so that the link stays a link.
std::string resolved(const std::string& path) {
  std::error_code failed;
  const std::filesystem::path target = std::filesystem::canonical(path, failed);
  return failed ? path : target.string();
}

/// A file that is removed again unless it was put in its place.
class Temporary {
 public:
  explicit Temporary(std::string path) : path_(std::move(path)) {}
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;
  ~Temporary() {
    if (!path_.empty()) ::unlink(path_.c_str());
  }
  [[nodiscard]] bool move_to(const std::string& target) {
    if (std::rename(path_.c_str(), target.c_str()) != 0) return false;
    path_.clear();
    return true;
  }

 private:
  std::string path_;
};

/// The whole new content of a file, on the disk beside it until it takes its place, and removed
/// again if it never does. A device or a pipe has no such place: it is written to directly, last.
class Replacement {
 public:
  Replacement(const std::string& path, const std::string& text)
      : path_(path), target_(resolved(path)) {
    struct stat old {};
    const bool exists = ::stat(target_.c_str(), &old) == 0;
    if (exists && S_ISDIR(old.st_mode)) fail("write", path, "it is a directory");
    if (exists && !S_ISREG(old.st_mode)) {
      direct_ = text;
      return;
    }
    // Replacing needs only the right to the directory: a file its owner protects stays as it is.
    if (exists && ::access(target_.c_str(), W_OK) != 0) fail("write", path, reason());
    const std::string name = fmt::format("{}.{}.part", target_, ::getpid());
    Descriptor file(::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
    if (!file.is_open()) fail("write", path, reason());
    part_.emplace(name);
    const bool mode_kept = !exists || ::fchmod(file.get(), old.st_mode & 07777U) == 0;
    if (!mode_kept || !write_all(file.get(), text) || ::fsync(file.get()) != 0 || !file.close()) {
      fail("write", path, reason());
    }
  }

  void put_in_place() {
    if (direct_) return write_directly(path_, *direct_);
    if (!part_->move_to(target_)) fail("write", path_, reason());
  }

 private:
  std::string path_, target_;
  std::optional<Temporary> part_;
  std::optional<std::string> direct_;
};

[[noreturn]] void too_large(const std::string& path) {
  fail("read", path, "it is larger than 4 MiB, too large for a job file");
}

std::string read_stream(std::istream& in) {
  std::string text(largest_file + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>(in.gcount()));
  if (in.bad()) fail("read", "-", "standard input failed");
  if (text.size() > largest_file) too_large("-");
  return text;
}

}  // namespace

std::string read_file(const std::string& path, std::istream& in) {
  if (path == "-") return read_stream(in);
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  struct stat status {};
  if (!file.is_open() || ::fstat(file.get(), &status) != 0) fail("read", path, reason());
  if (S_ISDIR(status.st_mode)) fail("read", path, "it is a directory, not a job file");
  std::string text;
  std::string part(std::size_t{1} << 16U, '\0');
  while (true) {
    const ssize_t count = ::read(file.get(), part.data(), part.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) fail("read", path, reason());
    if (count == 0) return text;
    text.append(part, 0, static_cast<std::size_t>(count));
    if (text.size() > largest_file) too_large(path);
  }
}

void write_file(const std::string& path, const std::string& text) {
  Replacement(path, text).put_in_place();
}

void write_files(const std::vector<NewFile>& files) {
  std::deque<Replacement> all;
  for (const NewFile& file : files) all.emplace_back(file.path, file.text);
  for (Replacement& one : all) one.put_in_place();
}

void make_directory(const std::string& path) {
  if (path.empty()) fail("make the directory", path, "it has no name; \".\" is this directory");
  std::error_code failed;
  if (std::filesystem::is_directory(path, failed)) return;
  if (std::filesystem::exists(path, failed)) {
    fail("write to", path, "it is a file, not a directory");
  }
  std::filesystem::create_directories(path, failed);
  if (!failed) return;
  errno = failed.value();
  fail("make the directory", path, reason());
}

void print(std::ostream& out, const std::string& text) {
  errno = 0;
  out.write(text.data(), static_cast<std::streamsize>(text.size()));
  out.flush();
  if (out) return;
  throw FileError("cannot write to standard output" + (errno == 0 ? "" : ": " + reason()));
}

bool same_file(const std::string& a, const std::string& b) {
  std::error_code failed;
  return std::filesystem::equivalent(a, b, failed) && !failed;
}

}  // namespace strikeoff::cli
