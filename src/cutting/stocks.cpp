// SPDX-License-Identifier: MIT
#include "cutting/stocks.h"

#include <algorithm>

namespace strikeoff {

std::vector<Stock> boards_of(const Job& job) {
  std::vector<Stock> boards = job.forms.strip_stock;
  if (job.forms.bend_stock) boards.push_back(*job.forms.bend_stock);
  return boards;
}

std::vector<Stock> sheets_of(const Job& job) {
  std::vector<Stock> sheets;
  for (const Slab& slab : job.slabs) {
    if (slab.panel && std::find(sheets.begin(), sheets.end(), *slab.panel) == sheets.end()) {
      sheets.push_back(*slab.panel);
    }
  }
  return sheets;
}

Saw saw_of(const Job& job) {
  return {job.forms.kerf, job.forms.end_trim, job.forms.reusable};
}

}  // namespace strikeoff
