// A device that takes so many bytes and then fails, as a full disk does.
#pragma once

#include <QIODevice>
#include <algorithm>

namespace steadyturn::test {

class FailingSink : public QIODevice {
 public:
  explicit FailingSink(qint64 room) : room_(room) { open(QIODevice::WriteOnly | QIODevice::Unbuffered); }

 protected:
  qint64 readData(char*, qint64) override { return -1; }
  qint64 writeData(const char*, qint64 size) override {
    if (room_ <= 0) {
      setErrorString(QStringLiteral("no space left"));
      return -1;
    }
    const qint64 taken = std::min(size, room_);
    room_ -= taken;
    return taken;
  }

 private:
  qint64 room_;
};

}  // namespace steadyturn::test
