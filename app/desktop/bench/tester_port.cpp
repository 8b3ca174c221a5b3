#include "tester_port.h"

#include <QSettings>

#include "problem_text.h"
#include "text.h"

namespace steadyturn {
namespace {

constexpr int lookEvery = 1500;  // milliseconds

}  // namespace

TesterSettings TesterSettings::remembered() {
  const QSettings kept;
  TesterSettings settings;
  settings.port = kept.value(QStringLiteral("tester/port")).toString();
  settings.baud = kept.value(QStringLiteral("tester/baud"), settings.baud).toInt();
  settings.pattern = kept.value(QStringLiteral("tester/pattern"), settings.pattern).toString();
  settings.peakMark = kept.value(QStringLiteral("tester/peak")).toString();
  return settings;
}

void TesterSettings::remember() const {
  QSettings kept;
  kept.setValue(QStringLiteral("tester/port"), port);
  kept.setValue(QStringLiteral("tester/baud"), baud);
  kept.setValue(QStringLiteral("tester/pattern"), pattern);
  kept.setValue(QStringLiteral("tester/peak"), peakMark);
}

TesterPort::TesterPort(QObject* parent) : QObject(parent) {
  clock_.start();
  looking_.setInterval(lookEvery);
  connect(&looking_, &QTimer::timeout, this, &TesterPort::lookAgain);
  connect(&port_, &QSerialPort::readyRead, this, &TesterPort::take);
  connect(&port_, &QSerialPort::errorOccurred, this, &TesterPort::loseOn);
}

Result<void> TesterPort::open(const TesterSettings& settings) {
  close();
  Result<TesterPattern> pattern = parsePattern(toText(settings.pattern), toText(settings.peakMark));
  if (!pattern) return tl::unexpected(pattern.error());
  settings_ = settings;
  feed_.emplace(std::move(*pattern));
  if (openPort()) {
    settings.remember();
    emit stateChanged();
    return {};
  }
  feed_.reset();
  return refuse({.field = "port",
                 .found = toText(settings.port),
                 .accepted = toText(port_.errorString()) +
                             "; a port that is plugged in, and that you may use (often the group dialout)"});
}

bool TesterPort::openPort() {
  port_.setPortName(settings_.port);
  port_.setBaudRate(settings_.baud);
  return port_.open(QIODevice::ReadOnly);
}

void TesterPort::close() {
  looking_.stop();
  feed_.reset();
  if (port_.isOpen()) port_.close();
  emit stateChanged();
}

void TesterPort::take() {
  const QByteArray bytes = port_.readAll();
  if (!feed_) return;
  handle(
      feed_->take({bytes.constData(), static_cast<std::size_t>(bytes.size())}, TesterFeed::Time(clock_.elapsed())));
}

void TesterPort::handle(const std::vector<TesterEvent>& events) {
  for (const TesterEvent& event : events) {
    const QString line = fromText(event.line).trimmed();
    switch (event.kind) {
      case TesterEventKind::Reading:
        emit reading(event.reading);
        break;
      case TesterEventKind::NoPeak:
        break;  // a running value, one of many
      case TesterEventKind::SecondPress:
        emit told(Tone::Info, tr("The tester sent “%1” twice within a moment: the second press is left out. Press "
                                 "once more if it was another pull.")
                                  .arg(line));
        break;
      case TesterEventKind::NotUnderstood:
        emit told(Tone::Caution, tr("The tester sent “%1”, which is no reading by its pattern; nothing is filled in. "
                                    "%2")
                                     .arg(line, wordProblems(event.problems)));
        break;
      case TesterEventKind::TooLong:
        emit told(Tone::Caution,
                  tr("The tester sends noise without an end of line: is %1 baud its speed?").arg(settings_.baud));
        break;
      case TesterEventKind::HalfLine:
        break;  // comes of unplugging alone, and is told with it
    }
  }
}

void TesterPort::loseOn(QSerialPort::SerialPortError error) {
  if (error == QSerialPort::NoError || !feed_ || looking_.isActive()) return;
  if (!port_.isOpen()) return;  // said by open()
  take();                       // what came before it went
  const std::vector<TesterEvent> half = feed_->unplugged();
  port_.close();
  QString words = tr("The tester on %1 is unplugged. It is taken up again when it is back; readings can be typed "
                     "meanwhile.")
                      .arg(settings_.port);
  for (const TesterEvent& event : half) {
    words += tr(" It went in the middle of a line (“%1”): that is no reading, take it again. What was read before "
                "stays.")
                 .arg(fromText(event.line).trimmed());
  }
  emit told(Tone::Caution, words);
  looking_.start();
  emit stateChanged();
}

void TesterPort::lookAgain() {
  if (!openPort()) return;
  looking_.stop();
  emit told(Tone::Good, tr("The tester on %1 is back.").arg(settings_.port));
  emit stateChanged();
}

QString triedWords(const TriedLine& tried) {
  if (!tried.reading) return wordProblems(tried.reading.error());
  const TesterReading& reading = *tried.reading;
  QString words = (reading.negative ? QStringLiteral("−") : QString()) + fromText(reading.value);
  if (reading.unit) words += QStringLiteral(" ") + fromText(unitSign(*reading.unit));
  if (!reading.mark.empty()) words += TesterPort::tr(", marked %1").arg(fromText(reading.mark));
  return words + (reading.peak ? TesterPort::tr(": a reading") : TesterPort::tr(": no peak, passed over"));
}

}  // namespace steadyturn
