package boundwright.store.season;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import boundwright.load.account.VerticalSpeeds;
import boundwright.load.account.Work;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Work in a file: a drill of a plan, and what was done on past days. */
final class WorkJson {
  private static final int LONGEST_SEQUENCE = 400;

  private WorkJson() {}

  static void write(ObjectNode to, Work work) {
    to.put("sequence", work.sequence().text());
    to.put("reps", work.reps());
    to.put("approachSteps", work.approachSteps());
    to.put("surface", work.surface().label());
    if (work.kind() != Work.Kind.BOUNDING) {
      to.put("work", work.kind().label());
    }
    if (!work.measured().isEmpty()) {
      ArrayNode speeds = to.putArray("measured");
      work.measured().forEach(v -> speeds.addObject().put("down_mps", v.down()).put("up_mps", v.up()));
    }
  }

  /** Reads one; the caller may ask for more keys and then says that it is done. */
  static Work read(Place at) {
    String text = at.text("sequence", LONGEST_SEQUENCE);
    Sequence sequence = at.make("sequence", () -> Sequence.parse(text));
    int reps = at.whole("reps", 1, Work.MOST_REPS);
    int steps = at.whole("approachSteps", 0, Athlete.MAX_STEPS, 0);
    Surface surface = at.choice("surface", List.of(Surface.values()), Surface::label);
    Work.Kind kind = at.choice("work", List.of(Work.Kind.values()), Work.Kind::label, Work.Kind.BOUNDING);
    List<VerticalSpeeds> speeds = new ArrayList<>();
    for (Place v : at.objects("measured")) {
      speeds.add(new VerticalSpeeds(v.number("down_mps", 0, 6), v.number("up_mps", 0, 6)));
      v.done();
    }
    return at.make(() -> new Work(sequence, reps, steps, surface, kind, speeds));
  }

  static void write(ObjectNode to, History past) {
    if (past.lastWeek() != null) {
      to.putObject("lastWeek").put("said", past.lastWeek().said().toString()).put("contacts", past.lastWeek().contacts());
    }
    if (past.first() == null ? History.of(past.days()).first() != null : !past.first().equals(History.of(past.days()).first())) {
      to.put("firstContact", past.first() == null ? null : past.first().toString());
    }
    if (!past.days().isEmpty()) {
      ArrayNode days = to.putArray("days");
      for (DayLoad d : past.days()) {
        ObjectNode day = days.addObject().put("date", d.date().toString());
        ArrayNode work = day.putArray("work");
        d.work().forEach(w -> write(work.addObject(), w));
        if (!d.other().isEmpty()) {
          ArrayNode other = day.putArray("other");
          d.other().forEach(o -> write(other.addObject(), o));
        }
      }
    }
  }

  /**
   * Reads what was done before.
   *
   * @param athleteId whose other work it is
   */
  static History history(@Nullable Place at, long athleteId) {
    if (at == null) {
      return History.NONE;
    }
    Place week = at.object("lastWeek");
    LastWeek lastWeek = null;
    if (week != null) {
      LocalDate said = week.date("said");
      int contacts = week.whole("contacts", 0, 1500);
      week.done();
      lastWeek = new LastWeek(said, contacts);
    }
    boolean told = at.has("firstContact");
    LocalDate first = at.dateOrNull("firstContact");
    List<DayLoad> days = new ArrayList<>();
    Set<LocalDate> seen = new HashSet<>();
    for (Place d : at.objects("days")) {
      DayLoad day = day(d, athleteId);
      if (!seen.add(day.date())) {
        throw d.wrong("date", "the day " + day.date() + " stands twice. Write all its work in one entry.");
      }
      days.add(day);
    }
    at.done();
    days.sort(Comparator.comparing(DayLoad::date));
    return new History(days, told ? first : History.of(days).first(), lastWeek);
  }

  private static DayLoad day(Place at, long athleteId) {
    LocalDate date = at.date("date");
    List<Work> work = new ArrayList<>();
    for (Place w : at.objects("work")) {
      work.add(read(w));
      w.done();
    }
    List<OtherWork> other = new ArrayList<>();
    for (Place o : at.objects("other")) {
      OtherWork.Kind kind = o.choice("kind", List.of(OtherWork.Kind.values()), OtherWork.Kind::label);
      double amount = o.number("amount", 0, 5000);
      double grade = o.number("grade", 0, 26, 0);
      long number = o.has("number") ? o.wholeLong("number", 0, Long.MAX_VALUE) : 0;
      other.add(o.make(() -> new OtherWork(number, athleteId, date, kind, amount, grade)));
      o.done();
    }
    at.done();
    return new DayLoad(date, work, other);
  }

  private static void write(ObjectNode to, OtherWork o) {
    to.put("kind", o.kind().label()).put("amount", o.amount());
    if (o.grade() != 0) {
      to.put("grade", o.grade());
    }
    if (o.id() != 0) {
      to.put("number", o.id());
    }
  }
}
