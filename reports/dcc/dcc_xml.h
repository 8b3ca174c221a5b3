// Elements of the two namespaces, each closed when its handle goes.
#pragma once

#include <QXmlStreamWriter>
#include <string_view>

namespace steadyturn {

inline constexpr auto dccNamespace = "https://ptb.de/dcc";
inline constexpr auto siNamespace = "https://ptb.de/si";

struct Attribute {
  const char* name;
  QString value;
};

class DccXml {
 public:
  explicit DccXml(QByteArray& bytes);

  class Open {
   public:
    explicit Open(QXmlStreamWriter& xml) : xml_(xml) {}
    Open(const Open&) = delete;
    Open& operator=(const Open&) = delete;
    ~Open() { xml_.writeEndElement(); }

   private:
    QXmlStreamWriter& xml_;
  };

  void begin();
  void end();
  [[nodiscard]] Open dcc(const char* name, std::initializer_list<Attribute> attributes = {});
  [[nodiscard]] Open si(const char* name);
  // An element that holds text alone.
  void dccText(const char* name, std::string_view text, std::initializer_list<Attribute> attributes = {});
  void siText(const char* name, std::string_view text);
  // <dcc:NAME><dcc:content>TEXT</dcc:content></dcc:NAME>
  void dccContent(const char* name, std::string_view text);

 private:
  void attributes(std::initializer_list<Attribute> all);
  QXmlStreamWriter xml_;
};

}  // namespace steadyturn
