"""Prints a calendar file as another library (icalendar, Debian: python3-icalendar) understands it, a field a line."""
import sys

import icalendar

with open(sys.argv[1], "rb") as file:
    calendar = icalendar.Calendar.from_ical(file.read())
if calendar.errors:
    sys.exit(str(calendar.errors))
print("calendar", calendar["VERSION"], calendar["PRODID"], sep="|")
for event in calendar.walk("VEVENT"):
    if event.errors:
        sys.exit(str(event.errors))
    print("UID", event["UID"], sep="|")
    print("DTSTAMP", event.decoded("DTSTAMP").isoformat(), sep="|")
    start = event.decoded("DTSTART")
    print("DTSTART", type(start).__name__, start.isoformat(), sep="|")
    print("SUMMARY", event["SUMMARY"], sep="|")
    print("DESCRIPTION", repr(str(event["DESCRIPTION"])), sep="|")
    print("CATEGORIES", *event["CATEGORIES"].cats, sep="|")
    print("TRANSP", event["TRANSP"], sep="|")
