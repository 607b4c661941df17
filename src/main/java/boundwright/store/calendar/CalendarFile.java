package boundwright.store.calendar;

import boundwright.quantity.PlainText;
import boundwright.season.Venue;
import boundwright.season.calendar.CalendarEvent;
import boundwright.season.calendar.SeasonCalendar;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.temporal.Temporal;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.ArrayList;
import java.util.List;
import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.ComponentList;
import net.fortuna.ical4j.model.PropertyList;
import net.fortuna.ical4j.model.component.Daylight;
import net.fortuna.ical4j.model.component.Observance;
import net.fortuna.ical4j.model.component.Standard;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.component.VTimeZone;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.LastModified;
import net.fortuna.ical4j.model.property.Location;
import net.fortuna.ical4j.model.property.Name;
import net.fortuna.ical4j.model.property.ProdId;
import net.fortuna.ical4j.model.property.Sequence;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.TzId;
import net.fortuna.ical4j.model.property.TzOffsetFrom;
import net.fortuna.ical4j.model.property.TzOffsetTo;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.immutable.ImmutableMethod;
import net.fortuna.ical4j.model.property.immutable.ImmutableStatus;
import net.fortuna.ical4j.model.property.immutable.ImmutableTransp;
import net.fortuna.ical4j.model.property.immutable.ImmutableVersion;
import net.fortuna.ical4j.validate.ValidationException;

/**
 * A calendar as a file of RFC 5545. The library puts it together and escapes it. Lines are folded here, because the standard counts octets (3.1:
 * at most 75) and the library characters. The zone is written out from Java's own rules, transition by transition, because the library would
 * ask the network for newer ones.
 */
public final class CalendarFile {
  /** What a calendar is sent as. */
  public static final String MEDIA_TYPE = "text/calendar; charset=utf-8";

  private static final String PROGRAM = "-//boundwright//season//EN";
  private static final int MOST_OCTETS = 75;

  private CalendarFile() {}

  /**
   * The file.
   *
   * @param zone in which hours are meant; one that never changes is written as UTC
   * @param now when it is made
   */
  public static byte[] write(SeasonCalendar calendar, ZoneId zone, Instant now) {
    Calendar out = new Calendar();
    out.add(new ProdId(PROGRAM));
    out.add(ImmutableVersion.VERSION_2_0);
    out.add(ImmutableMethod.PUBLISH);
    out.add(new Name(calendar.name()));
    boolean utc = zone.getRules().isFixedOffset();
    List<CalendarEvent> timed = calendar.events().stream().filter(e -> e.says().hours() != null).toList();
    if (!utc && !timed.isEmpty()) {
      Instant first = timed.get(0).says().date().atStartOfDay(zone).toInstant();
      Instant last = timed.get(timed.size() - 1).says().date().plusDays(1).atStartOfDay(zone).toInstant();
      out.add(zone(zone, first, last));
    }
    calendar.events().forEach(e -> out.add(event(e, zone, utc, now)));
    StringWriter text = new StringWriter();
    try {
      new CalendarOutputter(false, Integer.MAX_VALUE).output(out, text);
    } catch (IOException | ValidationException e) {
      throw new IllegalStateException("a calendar could not be written", e);
    }
    return folded(text.toString()).getBytes(StandardCharsets.UTF_8);
  }

  private static VEvent event(CalendarEvent e, ZoneId zone, boolean utc, Instant now) {
    CalendarEvent.Says says = e.says();
    VEvent out = new VEvent(false);
    out.add(new Uid(e.uid()));
    out.add(new DtStamp(now.truncatedTo(ChronoUnit.SECONDS)));
    Venue.Hours hours = says.hours();
    if (hours == null) {
      out.add(new DtStart<>(says.date()));
      out.add(new DtEnd<>(says.date().plusDays(1)));
    } else {
      out.add(new DtStart<>(at(says.date().atTime(hours.from()), zone, utc)));
      out.add(new DtEnd<>(at(says.date().atTime(hours.to()), zone, utc)));
    }
    out.add(new Summary(PlainText.shown(says.title())));
    if (!says.where().isEmpty()) {
      out.add(new Location(PlainText.shown(says.where())));
    }
    if (!says.notes().isEmpty()) {
      out.add(new Description(PlainText.shown(says.notes())));
    }
    out.add(new Sequence(e.sequence()));
    out.add(new LastModified(e.changed().truncatedTo(ChronoUnit.SECONDS)));
    out.add(e.cancelled() ? ImmutableStatus.VEVENT_CANCELLED : ImmutableStatus.VEVENT_CONFIRMED);
    out.add(says.busy() && !e.cancelled() ? ImmutableTransp.OPAQUE : ImmutableTransp.TRANSPARENT);
    return out;
  }

  private static Temporal at(LocalDateTime when, ZoneId zone, boolean utc) {
    return utc ? when.atZone(zone).toInstant() : when.atZone(zone);
  }

  /** The zone from the change before the first event to the last event; a zone that never changed begins in 1970. */
  private static VTimeZone zone(ZoneId zone, Instant first, Instant last) {
    ZoneRules rules = zone.getRules();
    List<Observance> parts = new ArrayList<>();
    ZoneOffsetTransition change = rules.previousTransition(first.plusSeconds(1));
    if (change == null) {
      ZoneOffset offset = rules.getOffset(first);
      parts.add(part(new Standard(), LocalDateTime.of(1970, 1, 1, 0, 0), offset, offset));
      change = rules.nextTransition(first);
    }
    while (change != null && !change.getInstant().isAfter(last)) {
      boolean summer = rules.isDaylightSavings(change.getInstant());
      parts.add(part(summer ? new Daylight() : new Standard(), change.getDateTimeBefore(), change.getOffsetBefore(), change.getOffsetAfter()));
      change = rules.nextTransition(change.getInstant());
    }
    return new VTimeZone(new PropertyList(List.of(new TzId(zone.getId()))), new ComponentList<>(parts));
  }

  private static Observance part(Observance part, LocalDateTime from, ZoneOffset before, ZoneOffset after) {
    part.add(new DtStart<>(from));
    part.add(new TzOffsetFrom(before));
    part.add(new TzOffsetTo(after));
    return part;
  }

  /** Lines of at most 75 octets, no character cut in two; a line that goes on begins with a blank. */
  static String folded(String text) {
    StringBuilder out = new StringBuilder(text.length() + text.length() / 40);
    for (String line : text.split("\r\n")) {
      int octets = 0;
      for (int i = 0; i < line.length(); i += Character.charCount(line.codePointAt(i))) {
        int c = line.codePointAt(i);
        int size = c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4;
        if (octets + size > MOST_OCTETS) {
          out.append("\r\n ");
          octets = 1;
        }
        out.appendCodePoint(c);
        octets += size;
      }
      out.append("\r\n");
    }
    return out.toString();
  }
}
