"""Writes day lengths by the almanac library astral (Debian: python3-astral, 1.6.1).

    python3 daylength.py < pairs > table

Each line of the input is a latitude and a date. Sunrise and sunset are astral's
for longitude 0 and sea level: the upper edge of the sun, with refraction.

This version of astral takes the sun's declination of 0 h UT for the whole day,
half a day before noon. So the length of a day is here the mean of astral's for
that date and for the next, which stands for noon; where either has no sunrise or
no sunset the date's own state is written.
"""

import datetime
import sys

import astral

almanac = astral.Astral()


def length(latitude, day):
    try:
        up = almanac.sunrise_utc(day, latitude, 0)
        down = almanac.sunset_utc(day, latitude, 0)
    except astral.AstralError:
        noon = datetime.datetime(day.year, day.month, day.day, 12, tzinfo=datetime.timezone.utc)
        high = almanac.solar_elevation(noon, latitude, 0) > 0
        return "never_sets" if high else "never_up"
    return (down - up).total_seconds() / 3600


def noon_length(latitude, day):
    today = length(latitude, day)
    tomorrow = length(latitude, day + datetime.timedelta(days=1))
    if isinstance(today, str):
        return today
    if isinstance(tomorrow, str):
        return "%.4f" % today
    return "%.4f" % ((today + tomorrow) / 2)


def main():
    for line in sys.stdin:
        latitude, date = line.split()
        print(latitude, date, noon_length(float(latitude), datetime.date.fromisoformat(date)))


main()
