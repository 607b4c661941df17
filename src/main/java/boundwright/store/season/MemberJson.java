package boundwright.store.season;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.load.account.History;
import boundwright.readiness.DrillFamily;
import boundwright.season.Away;
import boundwright.season.Entry;
import boundwright.season.Member;
import boundwright.season.SessionKind;
import boundwright.season.Span;
import boundwright.season.Wish;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** An athlete of the season in a file. */
final class MemberJson {
  /** What a wish says that wishes for no session. */
  static final String FREE = "no session";

  private MemberJson() {}

  static void write(ObjectNode to, Member m) {
    Athlete a = m.athlete();
    to.put("id", a.id()).put("name", a.name()).put("level", a.level().label()).put("takeOffFoot", a.takeOffFoot().label());
    to.put("approachSteps", a.rung());
    ObjectNode families = SeasonJson.object();
    for (DrillFamily f : DrillFamily.values()) {
      if (m.steps(f) != a.rung()) {
        families.put(f.label(), m.steps(f));
      }
    }
    if (!families.isEmpty()) {
      to.set("approachStepsByFamily", families);
    }
    to.put("fullRunUpSteps", m.fullSteps());
    to.put("growing", m.growing());
    date(to, "firstSession", m.firstSession());
    ArrayNode days = to.putArray("days");
    m.days().stream().sorted().forEach(d -> days.add(label(d)));
    to.put("largestWeek_standingBounds", m.peakWeek());
    date(to, "joins", m.joins());
    if (!m.away().isEmpty()) {
      ArrayNode away = to.putArray("away");
      m.away().forEach(x -> span(away.addObject(), x.span()).put("why", x.why().label()));
    }
    if (!m.entries().isEmpty()) {
      ArrayNode entries = to.putArray("meets");
      m.entries().forEach(e -> entries.addObject().put("meet", e.meet()).put("importance", e.importance().label()));
    }
    if (!m.wishes().isEmpty()) {
      ArrayNode wishes = to.putArray("wishes");
      m.wishes().forEach(w -> wishes.addObject().put("date", w.date().toString()).put("wish", wish(w.kind())));
    }
    ObjectNode past = SeasonJson.object();
    WorkJson.write(past, m.past());
    if (!past.isEmpty()) {
      to.set("past", past);
    }
  }

  /**
   * Reads one.
   *
   * @param place in the list, from 1: the number of an athlete that has none
   */
  static Member read(Place at, int place, SeasonFile.Numbers numbers) {
    String name = at.text("name", 80);
    Place own = at.of(name);
    long written = own.has("id") ? own.wholeLong("id", 1, Long.MAX_VALUE) : place;
    long id = own.make("name", () -> numbers.of(name, written));
    Level level = own.choice("level", List.of(Level.values()), Level::label);
    Foot foot = own.choice("takeOffFoot", List.of(Foot.values()), Foot::label);
    int rung = own.whole("approachSteps", 0, Athlete.MAX_STEPS);
    Map<DrillFamily, Integer> steps = new EnumMap<>(DrillFamily.class);
    Place families = own.object("approachStepsByFamily");
    if (families != null) {
      for (DrillFamily f : DrillFamily.values()) {
        steps.put(f, families.whole(f.label(), 0, Athlete.MAX_STEPS, rung));
      }
      families.done();
    }
    int full = own.whole("fullRunUpSteps", 4, Athlete.MAX_STEPS);
    boolean growing = own.flag("growing", false);
    LocalDate firstSession = own.dateOrNull("firstSession");
    Set<DayOfWeek> days = new HashSet<>(own.choices("days", List.of(DayOfWeek.values()), MemberJson::label));
    int peak = own.whole("largestWeek_standingBounds", 20, 5000);
    LocalDate joins = own.dateOrNull("joins");
    List<Away> away = away(own);
    List<Entry> entries = entries(own);
    List<Wish> wishes = wishes(own);
    History past = WorkJson.history(own.object("past"), id);
    own.done();
    return own.make(
        () -> new Member(new Athlete(id, name, level, foot, rung), growing, firstSession, steps, full, days, peak, joins, away, entries, wishes, past));
  }

  private static List<Away> away(Place at) {
    List<Away> out = new ArrayList<>();
    for (Place p : at.objects("away")) {
      Span span = span(p);
      out.add(new Away(span, p.choice("why", List.of(Away.Why.values()), Away.Why::label)));
      p.done();
    }
    return out;
  }

  private static List<Entry> entries(Place at) {
    List<Entry> out = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Place p : at.objects("meets")) {
      String meet = p.text("meet", SeasonFile.LONGEST_KEY);
      if (!seen.add(meet)) {
        throw p.wrong("meet", "the meet " + meet + " is entered for twice. Take one of the two out.");
      }
      out.add(new Entry(meet, p.choice("importance", List.of(Entry.Importance.values()), Entry.Importance::label, Entry.Importance.USUAL)));
      p.done();
    }
    return out;
  }

  private static List<Wish> wishes(Place at) {
    List<String> said = new ArrayList<>();
    SessionKind[] kinds = SessionKind.values();
    for (SessionKind k : kinds) {
      said.add(k.label());
    }
    said.add(FREE);
    List<Wish> out = new ArrayList<>();
    for (Place p : at.objects("wishes")) {
      LocalDate date = p.date("date");
      int which = said.indexOf(p.choice("wish", said, s -> s));
      out.add(new Wish(date, which < kinds.length ? kinds[which] : null));
      p.done();
    }
    return out;
  }

  private static String wish(@Nullable SessionKind kind) {
    return kind == null ? FREE : kind.label();
  }

  /** Days from one to another; one day when the end is not said. */
  static Span span(Place at) {
    LocalDate from = at.date("from");
    LocalDate to = at.dateOrNull("to");
    return at.make(() -> new Span(from, to == null ? from : to));
  }

  static ObjectNode span(ObjectNode to, Span span) {
    to.put("from", span.from().toString());
    if (!span.to().equals(span.from())) {
      to.put("to", span.to().toString());
    }
    return to;
  }

  /** {@code monday}. */
  static String label(DayOfWeek day) {
    return day.name().toLowerCase(Locale.ROOT);
  }

  private static void date(ObjectNode to, String key, @Nullable LocalDate day) {
    if (day != null) {
      to.put(key, day.toString());
    }
  }
}
