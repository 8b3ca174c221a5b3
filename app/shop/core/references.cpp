#include "inside.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

Result<void> Shop::addReference(const Reference& reference) {
  if (auto problems = problemsOf(reference); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::AddReference);
    if (inside_->references.find(reference.id)) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "reference",
                     .found = reference.id,
                     .accepted = "a mark that no reference standard of this shop has yet"});
    }
    inside_->references.add(reference, writing.stamp());
    writing.commit();
    return {};
  });
}

Result<Reference> Shop::reference(const std::string& id) const {
  return guarded([&]() -> Result<Reference> {
    if (auto reference = inside_->references.find(id)) return *reference;
    return refuse({.kind = ProblemKind::NotFound,
                   .field = "reference",
                   .found = id,
                   .accepted = "a reference standard of this shop; list them, or add it first"});
  });
}

Result<std::vector<Reference>> Shop::references() const {
  return guarded([&]() -> Result<std::vector<Reference>> { return inside_->references.all(); });
}

}  // namespace steadyturn
