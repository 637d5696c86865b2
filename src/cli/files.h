// SPDX-License-Identifier: MIT
#pragma once

#include <iosfwd>
#include <stdexcept>
#include <string>
#include <vector>

namespace strikeoff::cli {

/// A file that could not be read or written; `what()` says which and why, in plain words.
class FileError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// A job file may be this large: 4 MiB.
inline constexpr std::size_t largest_file = std::size_t{4} << 20U;

/// The whole file, or all of `in` where the path is "-". Throws FileError: missing, a directory,
/// unreadable, larger than `largest_file`.
[[nodiscard]] std::string read_file(const std::string& path, std::istream& in);

/// Writes the text as the whole content of the file, or leaves what was there: it goes to a
/// temporary file in the same directory, is flushed to the disk, and then takes the place of the
/// target at once. A device or a pipe is written directly. Throws FileError.
void write_file(const std::string& path, const std::string& text);

struct NewFile {
  std::string path, text;
};
/// The same for several files: none takes its place before all are on the disk, so that what is in
/// the way of one, or a full disk, leaves everything as it was. Only a disk that fails between two
/// renamings leaves some. Throws FileError.
void write_files(const std::vector<NewFile>& files);

/// Makes the directory, and those it lies in, where there is none. Throws FileError: a file of that
/// name, no right to.
void make_directory(const std::string& path);

/// Writes to the program's output and flushes it. Throws FileError when it is closed or full.
void print(std::ostream& out, const std::string& text);

/// True when both paths lead to one existing file.
[[nodiscard]] bool same_file(const std::string& a, const std::string& b);

}  // namespace strikeoff::cli
