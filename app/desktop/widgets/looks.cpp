#include "looks.h"

#include "text.h"

namespace steadyturn {

Look lookOf(Verdict verdict) {
  const QString word = fromText(writeVerdict(verdict));
  switch (verdict) {
    case Verdict::Pass:
      return {Sign::Tick, Tone::Good, word};
    case Verdict::ConditionalPass:
      return {Sign::HalfTick, Tone::Caution, word};
    case Verdict::ConditionalFail:
      return {Sign::HalfCross, Tone::Caution, word};
    case Verdict::Fail:
      return {Sign::Cross, Tone::Bad, word};
  }
  return {};
}

Look lookOf(Standing standing) {
  const QString word = fromText(writeStanding(standing));
  switch (standing) {
    case Standing::Retired:
      return {Sign::Dash, Tone::Quiet, word};
    case Standing::Held:
      return {Sign::Pause, Tone::Bad, word};
    case Standing::Failed:
      return {Sign::Cross, Tone::Bad, word};
    case Standing::NeverChecked:
      return {Sign::Ring, Tone::Caution, word};
    case Standing::Overdue:
      return {Sign::Warning, Tone::Bad, word};
    case Standing::Leaving:
      return {Sign::Slope, Tone::Caution, word};
    case Standing::DueSoon:
      return {Sign::Clock, Tone::Info, word};
    case Standing::Ready:
      return {Sign::Tick, Tone::Good, word};
  }
  return {};
}

}  // namespace steadyturn
