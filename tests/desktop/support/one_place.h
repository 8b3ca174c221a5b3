// One of the window's places on a demo depot, without the window around it, worked by real key events.
#pragma once

#include <QFile>
#include <QLineEdit>
#include <memory>

#include "demo_shop.h"
#include "keys.h"
#include "open_shop.h"

namespace steadyturn {

template <typename Place>
class OnePlace : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    shop_ = std::make_unique<OpenShop>(open());
    place_ = std::make_unique<Place>(*shop_);
    place_->resize(1160, 760);
    present(*place_);
    place_->arrive();
    ASSERT_TRUE(wait([this] { return !place_->model().working(); }));
  }
  // In the place of what stands in the line of that name, and Enter.
  void typeInto(const char* line, const QString& text) {
    auto* field = named<QLineEdit>(*place_, line);
    ASSERT_TRUE(field);
    field->setFocus();
    field->selectAll();
    keys_.type(text);
    keys_.press(Qt::Key_Return);
  }
  static QByteArray content(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  }
  std::unique_ptr<OpenShop> shop_;
  std::unique_ptr<Place> place_;
  Keys keys_;
};

}  // namespace steadyturn
