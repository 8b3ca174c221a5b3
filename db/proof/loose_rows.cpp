#include "loose_rows.h"

namespace steadyturn {

namespace {

void findLoosePoints(Database& database, const ReportFault& report) {
  Statement points(
      database,
      "SELECT check_id, position FROM check_point p WHERE NOT EXISTS (SELECT 1 FROM check_record r WHERE "
      "r.id = p.check_id) ORDER BY check_id, position");
  points.run();
  while (points.next())
    report(0, "set-point " + points.text(1) + " of check " + points.text(0) + " belongs to no check");
}

void findLooseJobs(Database& database, const ReportFault& report) {
  Statement jobs(database,
                 "SELECT id FROM job j WHERE NOT EXISTS (SELECT 1 FROM tightening t WHERE t.job = j.id) "
                 "AND NOT EXISTS (SELECT 1 FROM job_event e WHERE e.job = j.id) ORDER BY id");
  jobs.run();
  while (jobs.next()) report(0, "job " + jobs.text(0) + " has no tightening, and no entry tells of it");
}

// Both in the order of the revision's id, side by side.
void compareSearchIndex(Database& database, const ReportFault& report) {
  Statement wanted(
      database,
      "SELECT r.id, r.fastener, r.component, r.assembly, r.thread, r.entry FROM fastener_revision r WHERE "
      "NOT EXISTS (SELECT 1 FROM fastener_revision n WHERE n.fastener = r.fastener AND n.number > "
      "r.number) ORDER BY r.id");
  Statement indexed(database,
                    "SELECT rowid, fastener, component, assembly, thread FROM fastener_search ORDER BY rowid");
  wanted.run();
  indexed.run();
  bool more = indexed.next();
  const auto foreign = [&] {
    report(0, "the fastener search holds " + indexed.text(1) + " as revision " + indexed.text(0) +
                  ", which is no newest revision");
    more = indexed.next();
  };
  while (wanted.next()) {
    while (more && indexed.integer(0) < wanted.integer(0)) foreign();
    if (!more || indexed.integer(0) != wanted.integer(0)) {
      report(wanted.integer(5), "fastener " + wanted.text(1) + " is missing in the fastener search");
      continue;
    }
    for (int column = 1; column <= 4; ++column) {
      if (indexed.string(column) == wanted.string(column)) continue;
      report(wanted.integer(5), "fastener " + wanted.text(1) + " differs in the fastener search: \"" +
                                    indexed.text(column) + "\" instead of \"" + wanted.text(column) + '"');
    }
    more = indexed.next();
  }
  while (more) foreign();
}

}  // namespace

void findLooseRows(Database& database, const ReportFault& report) {
  findLoosePoints(database, report);
  findLooseJobs(database, report);
  compareSearchIndex(database, report);
}

}  // namespace steadyturn
