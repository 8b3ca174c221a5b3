#include "demo_shop.h"

#include <QSettings>
#include <stdexcept>

#include "problem_text.h"
#include "text.h"

namespace steadyturn {

void DemoShop::SetUp() {
  QSettings().clear();
  ASSERT_TRUE(folder_.isValid());
  const Result<Shop> made = Shop::createDemo(toText(shopFile()));
  ASSERT_TRUE(made) << toText(wordProblems(made.error()));
}

Shop DemoShop::open() const {
  Result<Shop> shop = Shop::open(toText(shopFile()));
  if (!shop) throw std::runtime_error(toText(wordProblems(shop.error())));
  return std::move(*shop);
}

}  // namespace steadyturn
