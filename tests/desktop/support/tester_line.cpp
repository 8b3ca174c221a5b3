#include "tester_line.h"

#include <pty.h>
#include <unistd.h>

#include <QFile>
#include <array>
#include <stdexcept>

namespace steadyturn {

TesterLine::TesterLine(const QString& name) : name_(name) { plugIn(); }

TesterLine::~TesterLine() { unplug(); }

void TesterLine::plugIn() {
  int near = -1;
  std::array<char, 64> device{};
  if (openpty(&far_, &near, device.data(), nullptr, nullptr) != 0) throw std::runtime_error("no pseudo-terminal");
  close(near);  // the program opens it by its name
  QFile::remove(name_);
  if (!QFile::link(QString::fromLocal8Bit(device.data()), name_)) throw std::runtime_error("no link to the terminal");
}

void TesterLine::send(const QByteArray& bytes) const {
  if (write(far_, bytes.constData(), static_cast<std::size_t>(bytes.size())) != bytes.size())
    throw std::runtime_error("the line takes nothing");
}

void TesterLine::unplug() {
  if (far_ >= 0) close(far_);
  far_ = -1;
  QFile::remove(name_);
}

}  // namespace steadyturn
