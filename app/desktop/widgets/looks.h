// What a verdict and a standing look like: sign, tone and word belong together.
#pragma once

#include <QString>

#include "shop_views.h"
#include "sign.h"
#include "theme.h"

namespace steadyturn {

struct Look {
  Sign sign = Sign::Ring;
  Tone tone = Tone::Quiet;
  QString word;
};

Look lookOf(Verdict verdict);
Look lookOf(Standing standing);

}  // namespace steadyturn
