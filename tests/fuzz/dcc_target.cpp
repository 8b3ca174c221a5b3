// Any bytes as a reference standard's calibration certificate: refused with a reason, or figures that a bench can
// use. Nothing that a document type declares is looked up or put in.
#include <QBuffer>
#include <cmath>

#include "dcc_reader.h"
#include "driver.h"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace steadyturn;
  const auto text = fuzz::textOf(data, size);
  QByteArray bytes(text.data(), static_cast<qsizetype>(text.size()));
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::ReadOnly);
  const auto read = readDcc(buffer);
  if (!read) {
    fuzz::promise(!read.error().empty() && !read.error().front().found.empty(), "a refusal says what was found");
    return 0;
  }
  // An entity that stands for more than itself would make more of a file than there is in it. A character of one byte
  // takes three in UTF-8 at most.
  const auto taken = read->number.size() + read->laboratory.size() + read->description.size() + read->serial.size();
  fuzz::promise(taken <= 3 * size, "what is read stands in the file");
  fuzz::promise(read->values > 0, "a certificate taken states an uncertainty");
  for (const double figure : {read->expandedUncertaintyPercent, read->coverageFactor, read->errorPercent}) {
    fuzz::promise(std::isfinite(figure), "a figure is a number");
  }
  fuzz::promise(read->low.has_value() == read->high.has_value(), "a range has two ends");
  if (read->low) fuzz::promise(read->low->value <= read->high->value, "a range does not run backwards");
  return 0;
}
