#include "open_shop.h"

namespace steadyturn {

OpenShop::OpenShop(Shop shop, QObject* parent) : QObject(parent), shop_(std::move(shop)) {}

}  // namespace steadyturn
