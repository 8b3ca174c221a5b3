// The one font of charts and papers.
#pragma once

#include <QFont>

namespace steadyturn {

// In pixels, so that the same drawing is right on a screen and, scaled as a whole, on paper. Without ligatures: a
// reader that searches for "certificate" must not find "certiﬁcate".
QFont plainFont(int pixels, bool bold = false);

}  // namespace steadyturn
