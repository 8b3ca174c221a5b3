// Charts and fonts need an application object; gtest's own main makes none.
#include <gtest/gtest.h>

#include <QApplication>
#include <memory>

namespace {

class QtApplication : public testing::Environment {
 public:
  void SetUp() override { application_ = std::make_unique<QApplication>(count_, arguments_); }
  void TearDown() override { application_.reset(); }

 private:
  int count_ = 1;
  char name_[8] = "reports";
  char* arguments_[2] = {name_, nullptr};
  std::unique_ptr<QApplication> application_;
};

const auto* const registered = testing::AddGlobalTestEnvironment(new QtApplication);

}  // namespace
