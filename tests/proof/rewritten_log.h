// Makes a changed log consistent in itself, as somebody would who knows the program: every leaf from its entry's
// bytes, every inner hash from the leaves.
#pragma once

#include "raw_shop.h"

namespace steadyturn {

void makeConsistent(RawShop& shop);

}  // namespace steadyturn
