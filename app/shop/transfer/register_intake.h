// The way in of what a shop has a register of: tools, reference standards, fasteners. A row is a record with a mark
// of its own.
#pragma once

#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "kinds.h"
#include "validate.h"

namespace steadyturn {

// `Table` is the store's; `read` makes a record of a row. The mark stands in column 0.
template <typename Table, typename Record>
class RegisterIntake : public Intake {
 public:
  using Read = Record (*)(ImportRow& row);

  RegisterIntake(ImportRun& import, Table& table, Read read) : import_(import), table_(table), read_(read) {
    for (const Record& record : table.all()) lineOfMark_.emplace(record.id, inTheShop);
  }

  void take(ImportRow& row) override {
    Record record = read_(row);
    // With a cell that could not be read, what the others say about each other is no help.
    if (!row.sound()) return;
    if (const Problems problems = problemsOf(record); !problems.empty()) row.refuse(problems);
    refuseTakenMark(row, record.id);
    if (!row.sound()) return;
    warnOf(row, record);
    if constexpr (requires { record.enteredBy; }) record.enteredBy = import_.options.by;
    records_.push_back(std::move(record));
  }

  void finish(const EntryStamp& stamp, const std::function<bool(double)>& advance) override {
    if (!import_.problems.empty()) return;
    for (std::size_t i = 0; i < records_.size(); ++i) {
      if (!advance(static_cast<double>(i) / static_cast<double>(records_.size()))) return;
      table_.add(records_[i], stamp);
      ++import_.report.records;
    }
  }

 private:
  static constexpr std::size_t inTheShop = 0;

  void refuseTakenMark(ImportRow& row, const std::string& mark) {
    const auto [taken, isNew] = lineOfMark_.emplace(mark, row.line());
    if (isNew) return;
    const std::string where = taken->second == inTheShop
                                  ? "the shop has it already"
                                  : "line " + std::to_string(taken->second) + " has it already";
    row.refuse(0, mark, "a mark that is not taken: " + where, ProblemKind::Conflict);
  }

  void warnOf(const ImportRow& row, const Record& record) {
    if constexpr (requires { warningsOf(record); }) {
      for (const std::string& warning : warningsOf(record)) import_.warn(row.line(), warning);
    }
  }

  ImportRun& import_;
  Table& table_;
  Read read_;
  std::unordered_map<std::string, std::size_t> lineOfMark_;
  std::vector<Record> records_;
};

// One row after the other of a register, as `write` spells it.
template <typename Record>
void writeRegister(TableWriter& writer, const std::vector<Record>& records,
                   void (*write)(TableWriter&, const Record&)) {
  for (std::size_t i = 0; i < records.size(); ++i) {
    if (!writer.advance(static_cast<double>(i) / static_cast<double>(records.size()))) return;
    write(writer, records[i]);
    writer.endRow();
  }
}

}  // namespace steadyturn
