package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.growth.FastGrowth;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.Season;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import boundwright.load.account.VerticalSpeeds;
import boundwright.load.account.Work;
import boundwright.load.back.LegBack;
import boundwright.runway.CoachSettings;
import boundwright.runway.Drill;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Writes a parcel as lines of {@link Fields}, each with what it {@code is}; the first says the version, the last how many lines there are
 * and their check sum, so that a text that was cut or changed on its way is refused and no wrong number comes of it.
 */
final class ParcelText {
  /** Of the lines' form; another is not read. */
  static final int VERSION = 1;
  static final String FIRST = "boundwright-phone";

  private final StringBuilder out = new StringBuilder(40_000);
  private int lines;

  private ParcelText() {}

  static String of(Parcel parcel) {
    ParcelText t = new ParcelText();
    t.first("day");
    t.day(parcel);
    parcel.parts().forEach(t::part);
    return t.ended();
  }

  static String of(Parcel.Part part) {
    ParcelText t = new ParcelText();
    t.first("part");
    t.part(part);
    return t.ended();
  }

  /** The lines of one athlete, without the first and the last of a text. */
  static String lines(Parcel.Part part) {
    ParcelText t = new ParcelText();
    t.part(part);
    return t.out.toString();
  }

  /** A text up to its athletes. */
  static String begun(Parcel parcel) {
    ParcelText t = new ParcelText();
    t.first("day");
    t.day(parcel);
    return t.out.toString();
  }

  /** A text of one athlete up to its lines. */
  static String begun() {
    ParcelText t = new ParcelText();
    t.first("part");
    return t.out.toString();
  }

  /** The last line of a text that has so many lines before it. */
  static String last(int lines, String sum) {
    return is("end").put("lines", lines).put("sum", sum).line() + "\n";
  }

  private void first(String kind) {
    put(new Fields("page").put("is", FIRST).put("v", VERSION).put("kind", kind));
  }

  private void put(Fields line) {
    out.append(line.line()).append('\n');
    lines++;
  }

  private static Fields is(String what) {
    return new Fields("page").put("is", what);
  }

  private String ended() {
    String body = out.toString();
    return body + last(lines, CheckSum.of(body));
  }

  private void day(Parcel p) {
    CoachSettings s = p.settings();
    Facility f = s.facility();
    put(
        is("day").put("date", p.day()).put("zone", p.zone().getTotalSeconds()).put("made", p.madeAt().toEpochMilli())
            .put("unit", s.unit().name()).put("chance", s.marks().chance()).put("sand", s.marks().sandMargin_m())
            .put("clear", s.marks().clearMargin_m()).put("set", s.setContacts()).put("title", p.plan().title()));
    put(
        is("place").put("name", f.name()).put("runway", f.runway_m()).put("pit", f.pit_m()).put("flat", f.flat_m())
            .put("surface", f.surface().name()));
    guard(p.guard());
    for (Drill d : p.plan().drills()) {
      put(
          is("drill").put("sequence", d.sequence().text()).put("steps", d.steps()).put("sets", d.sets()).put("reps", d.reps())
              .put("sand", yes(d.inSand())));
    }
  }

  private void guard(GuardSettings guard) {
    GuardLimits l = guard.limits();
    put(
        is("guard").put("growing", band(l.growing())).put("growingWeeks", l.growingWeeks()).put("growingSessions", l.growingSessions())
            .put("growingStep", l.growingStep()).put("growingStepWeeks", l.growingStepWeeks()).put("spacing", band(l.spacingHours()))
            .put("hardContacts", l.hardContacts()).put("hardSteps", l.hardSteps()).put("own", band(l.ownPercent()))
            .put("startWeek", l.startWeek()).put("seriesSteps", l.seriesSteps()).put("seriesContacts", l.seriesContacts())
            .put("seriesRefused", l.seriesRefusedSteps()).put("pain", band(l.pain())));
    for (Season season : Season.values()) {
      for (Level level : Level.KNOWN) {
        put(is("session").put("season", season.name()).put("level", level.name()).put("band", band(l.session(season, level))));
      }
    }
    ContactTimes times = guard.scale().times();
    put(
        is("scale").put("power", guard.scale().power()).put("standing", times.standing_s()).put("full", times.full_s())
            .put("factor", Fields.reals(times.factor())).put("sets", guard.scale().setUnits()).put("sport", guard.scale().sportUnits()));
  }

  private static String band(Band b) {
    return Fields.number(b.caution()) + "," + Fields.number(b.refuse());
  }

  private static String yes(boolean b) {
    return b ? "yes" : "no";
  }

  private static String written(FlightModel model) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(model.toBytes());
  }

  private void part(Parcel.Part p) {
    Athlete a = p.profile().athlete();
    List<String> steps = p.steps().stream().map(String::valueOf).toList();
    put(
        is("athlete").put("id", a.id()).put("name", a.name()).put("level", a.level().name()).put("foot", a.takeOffFoot().name())
            .put("rung", a.rung()).put("steps", String.join(",", steps)).put("season", p.season() == null ? null : p.season().name())
            .put("growing", yes(p.care().growing())).put("began", p.care().firstSession()).put("first", p.history().first())
            .put("before", p.before() == null ? null : written(p.before())).put("base", written(p.base())));
    for (KnownMark m : p.profile().knownMarks()) {
      put(
          is("mark").put("kind", m.kind().name()).put("steps", m.approachSteps()).put("distance", m.distance_m()).put("date", m.date())
              .put("both", yes(m.bothFeet())));
    }
    for (MeasuredRunUp r : p.profile().runUps()) {
      put(is("runup").put("steps", r.steps()).put("length", r.length_m()).put("speed", r.speed_mps()).put("date", r.date()));
    }
    p.reps().forEach(this::rep);
    p.gone().forEach(token -> put(is("gone").put("token", token)));
    load(p);
  }

  private void load(Parcel.Part p) {
    FastGrowth fast = p.care().fast();
    if (fast != null) {
      put(
          is("fast").put("now", yes(fast.now())).put("until", fast.until()).put("speed", fast.speed_cm_y()).put("low", fast.low_cm_y())
              .put("high", fast.high_cm_y()).put("measured", fast.measured()).put("limit", fast.limit_cm_y()));
    }
    for (Pain pain : p.care().pains()) {
      put(
          is("pain").put("date", pain.date()).put("area", pain.area()).put("level", pain.level())
              .put("settled", pain.settled() == null ? null : yes(pain.settled())).put("refer", yes(pain.refer())));
    }
    for (MedicalHold h : p.care().holds()) {
      put(is("hold").put("from", h.from()).put("cleared", h.clearedOn()));
    }
    for (LegBack w : p.care().backs()) {
      put(
          is("back").put("leg", w.leg().name()).put("begun", w.begun()).put("until", w.until()).put("start", w.stages().startShare())
              .put("growth", w.stages().growth()).put("former", w.formerUnits()).put("stage", w.stage()).put("since", w.since()).put("known", w.known()));
    }
    LastWeek week = p.history().lastWeek();
    if (week != null) {
      put(is("week").put("said", week.said()).put("contacts", week.contacts()));
    }
    p.history().days().forEach(d -> dayLoad("past", d));
    dayLoad("today", p.other());
    if (!p.timed().isEmpty()) {
      List<String> timed = p.timed().stream().map(t -> t.steps() + ":" + Fields.number(t.seconds())).toList();
      put(is("timed").put("all", String.join("|", timed)));
    }
    for (GuardOverride o : p.overrides()) {
      put(is("override").put("rule", o.rule().name()).put("answer", o.answer().name()));
    }
  }

  private void rep(Parcel.Kept kept) {
    Rep r = kept.rep();
    put(
        is("rep").put("id", r.id()).put("token", kept.token()).put("date", r.date()).put("sequence", r.sequence().text())
            .put("steps", r.approachSteps()).put("surface", r.surface().name()).put("prints", Fields.reals(r.footprints_m()))
            .put("landing", r.landing_m()).put("outcome", r.outcome() == null ? null : r.outcome().name()).put("after", r.brokeOffAfter())
            .put("mark", r.markToSand_m()).put("looked", yes(r.judged()))
            .put("faults", r.faults().isEmpty() ? null : String.join(",", r.faults())));
  }

  /** One line a day, its work as {@code letters:reps:steps:surface:kind:speeds}, one after another: there are many. */
  private void dayLoad(String is, DayLoad day) {
    if (day.isEmpty()) {
      return;
    }
    put(is(is).put("date", day.date()).put("work", joined(day.work().stream().map(ParcelText::work).toList()))
        .put("other", joined(day.other().stream().map(ParcelText::other).toList())));
  }

  private static @Nullable String joined(List<String> items) {
    return items.isEmpty() ? null : String.join("|", items);
  }

  private static String work(Work w) {
    List<String> speeds = new ArrayList<>();
    for (VerticalSpeeds v : w.measured()) {
      speeds.add(Fields.number(v.down()) + "," + Fields.number(v.up()));
    }
    return w.sequence().letters() + ":" + w.reps() + ":" + w.approachSteps() + ":" + w.surface().name() + ":" + w.kind().name() + ":"
        + String.join("~", speeds);
  }

  private static String other(OtherWork o) {
    return o.kind().name() + ":" + Fields.number(o.amount()) + ":" + Fields.number(o.grade());
  }
}
