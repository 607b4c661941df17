package boundwright.store.season;

import boundwright.athlete.Athlete;
import boundwright.load.account.Work;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.season.Block;
import boundwright.season.Climb;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The file of a plan, see {@code docs/season-file.md}: what everybody does on each day, one object of JSON in UTF-8. */
public final class PlanFile {
  /** What a plan's file says it is. */
  public static final String KIND = "boundwright plan";

  private static final double MOST_WANTED = 1e6;

  private PlanFile() {}

  /**
   * The plan in the bytes of a file.
   *
   * @throws RefusedException with the place in the file, the value, what is allowed and a way out
   */
  public static SeasonPlan read(byte[] bytes) {
    Place root = SeasonJson.root(SeasonJson.text(bytes), KIND);
    String name = root.text("name", 60);
    int version = root.whole("version", 0, Integer.MAX_VALUE, 0);
    List<SeasonPlan.Year> years = new ArrayList<>();
    List<Place> athletes = root.objects("athletes");
    if (athletes.size() > SeasonInput.MOST_ATHLETES) {
      throw root.wrong("athletes", athletes.size() + " athletes are out of range: at most " + SeasonInput.MOST_ATHLETES + ".");
    }
    Set<Long> seen = new HashSet<>();
    for (Place p : athletes) {
      SeasonPlan.Year year = year(p);
      if (!seen.add(year.athleteId())) {
        throw p.wrong("id", "the number " + year.athleteId() + " stands twice. Give each athlete their own.");
      }
      years.add(year);
    }
    root.done();
    return new SeasonPlan(name, version, years);
  }

  /** A plan as a file, in lines. */
  public static String write(SeasonPlan plan) {
    ObjectNode root = SeasonJson.begin(KIND);
    root.put("name", plan.name()).put("version", plan.version());
    ArrayNode athletes = root.putArray("athletes");
    plan.years().forEach(y -> write(athletes.addObject(), y));
    return SeasonJson.lines(root);
  }

  /** One athlete's part of a plan, in one line: as it is kept. */
  public static String year(SeasonPlan.Year year) {
    ObjectNode node = SeasonJson.object();
    write(node, year);
    return SeasonJson.line(node);
  }

  /** What {@link #year(SeasonPlan.Year)} wrote. */
  public static SeasonPlan.Year readYear(String line) {
    return year(SeasonJson.object(line));
  }

  private static void write(ObjectNode to, SeasonPlan.Year y) {
    to.put("id", y.athleteId()).put("name", y.athlete());
    ArrayNode days = to.putArray("days");
    for (PlannedDay d : y.days()) {
      ObjectNode day = days.addObject().put("date", d.date().toString()).put("session", d.session().kind().label());
      if (d.session().venue() != null) {
        day.put("place", d.session().venue());
      }
      ArrayNode blocks = day.putArray("blocks");
      for (Block b : d.session().blocks()) {
        ObjectNode block = blocks.addObject();
        WorkJson.write(block, b.work());
        block.put("sets", b.sets()).put("inSand", b.inSand());
      }
    }
    ArrayNode climbs = to.putArray("approach");
    for (Climb c : y.climbs()) {
      ObjectNode climb = climbs.addObject().put("family", c.family().label());
      ArrayNode stages = climb.putArray("stages");
      c.stages().forEach(s -> stages.addObject().put("from", s.from().toString()).put("approachSteps", s.steps()));
      if (!c.decisions().isEmpty()) {
        ArrayNode decisions = climb.putArray("decisions");
        for (Climb.DecisionDay d : c.decisions()) {
          decisions
              .addObject()
              .put("date", d.date().toString())
              .put("approachStepsIfReady", d.goesTo())
              .put("approachStepsElse", d.stays())
              .put("chanceReady", d.chance())
              .put("nextLook", d.nextLook().toString());
        }
      }
    }
    ArrayNode wanted = to.putArray("wantedByWeek_standingBounds");
    y.wanted().forEach(w -> wanted.add(w));
  }

  private static SeasonPlan.Year year(Place at) {
    String name = at.text("name", 80);
    Place own = at.of(name);
    long id = own.wholeLong("id", 1, Long.MAX_VALUE);
    List<PlannedDay> days = new ArrayList<>();
    Set<LocalDate> seen = new HashSet<>();
    for (Place p : own.objects("days")) {
      PlannedDay day = day(p);
      if (!seen.add(day.date())) {
        throw p.wrong("date", "the day " + day.date() + " stands twice. An athlete has one session a day.");
      }
      days.add(day);
    }
    List<Climb> climbs = new ArrayList<>();
    for (Place p : own.objects("approach")) {
      climbs.add(climb(p));
    }
    List<Double> wanted = own.numbers("wantedByWeek_standingBounds", 0, MOST_WANTED);
    own.done();
    return new SeasonPlan.Year(id, name, days, climbs, wanted);
  }

  private static PlannedDay day(Place at) {
    LocalDate date = at.date("date");
    SessionKind kind = at.choice("session", List.of(SessionKind.values()), SessionKind::label);
    @Nullable String place = at.textOrNull("place", SeasonFile.LONGEST_KEY);
    List<Block> blocks = new ArrayList<>();
    for (Place p : at.objects("blocks")) {
      Work work = WorkJson.read(p);
      blocks.add(new Block(work, p.whole("sets", 1, Work.MOST_REPS, 1), p.flag("inSand", false)));
      p.done();
    }
    at.done();
    return new PlannedDay(date, new Session(kind, place, blocks));
  }

  private static Climb climb(Place at) {
    DrillFamily family = at.choice("family", List.of(DrillFamily.values()), DrillFamily::label);
    List<Climb.Stage> stages = new ArrayList<>();
    for (Place p : at.objects("stages")) {
      LocalDate from = p.date("from");
      stages.add(new Climb.Stage(p.whole("approachSteps", 0, Athlete.MAX_STEPS), from));
      p.done();
    }
    List<Climb.DecisionDay> decisions = new ArrayList<>();
    for (Place p : at.objects("decisions")) {
      LocalDate date = p.date("date");
      int ready = p.whole("approachStepsIfReady", 0, Athlete.MAX_STEPS);
      int stays = p.whole("approachStepsElse", 0, Athlete.MAX_STEPS);
      double chance = p.number("chanceReady", 0, 1);
      decisions.add(new Climb.DecisionDay(date, stays, ready, chance, p.date("nextLook")));
      p.done();
    }
    at.done();
    return at.make(() -> new Climb(family, stages, decisions));
  }
}
