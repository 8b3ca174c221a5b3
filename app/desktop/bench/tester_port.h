// A torque tester on a serial port: its lines become readings, everything else that comes is told in words.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QSerialPort>
#include <QTimer>
#include <optional>

#include "tester_feed.h"
#include "theme.h"

namespace steadyturn {

struct TesterSettings {
  QString port;  // "ttyUSB0", or a whole path
  int baud = 9600;
  QString pattern = QStringLiteral("{value} {unit}");
  QString peakMark;

  static TesterSettings remembered();
  void remember() const;
};

class TesterPort : public QObject {
  Q_OBJECT
 public:
  explicit TesterPort(QObject* parent = nullptr);
  // 8 data bits, no parity, one stop bit. Problems name "port", "pattern" and "peak mark".
  Result<void> open(const TesterSettings& settings);
  void close();
  bool isOpen() const { return port_.isOpen(); }
  // Open, or gone and looked for until it is back.
  bool isWanted() const { return feed_.has_value(); }
  QString name() const { return settings_.port; }

 signals:
  void reading(const steadyturn::TesterReading& reading);
  void told(steadyturn::Tone tone, const QString& text);
  void stateChanged();

 private:
  bool openPort();
  void take();
  void handle(const std::vector<TesterEvent>& events);
  void loseOn(QSerialPort::SerialPortError error);
  void lookAgain();

  TesterSettings settings_;
  std::optional<TesterFeed> feed_;
  QSerialPort port_;
  QTimer looking_;
  QElapsedTimer clock_;
};

// "10.04 N·m, marked PK", or why a line is no reading.
QString triedWords(const TriedLine& tried);

}  // namespace steadyturn
