package boundwright.cli;

import boundwright.meet.Attempt;
import boundwright.meet.Combined;
import boundwright.meet.KeptAttempt;
import boundwright.meet.Meet;
import boundwright.meet.MeetAim;
import boundwright.meet.MeetNow;
import boundwright.meet.MeetSheet;
import boundwright.meet.Placing;
import boundwright.meet.RivalMeaning;
import boundwright.meet.Wind;
import boundwright.quantity.LengthUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What {@code meet --json} prints; field by field in {@code docs/formats-json.md}. */
final class MeetJson {
  private MeetJson() {}

  /** A meet in the list. */
  record Head(
      long id,
      String name,
      String date,
      String event,
      @Nullable PartOf combined,
      String competition,
      double boardToSand_m,
      int entrants,
      int attempts) {
    static Head of(MeetSheet m) {
      Combined part = m.rules().combined();
      return new Head(
          m.id(),
          m.name(),
          m.date().toString(),
          m.event().label(),
          part == null ? null : new PartOf(part.table().label(), m.rules().rounds(), part.wind().label(), part.wind().source().line()),
          m.competition(),
          Json.length(m.board_m()),
          m.entrants().size(),
          m.attempts().size());
    }
  }

  /** The combined event that a meet is part of. */
  record PartOf(String name, int attemptsEach, String windRule, String windSource) {}

  /** How a meet stands; {@code kept} and {@code takenBack} only where something was entered. */
  record Now(
      Head meet,
      @Nullable One kept,
      @Nullable One takenBack,
      List<Place> ranks,
      @Nullable Integer round,
      List<String> order,
      @Nullable String next,
      boolean cut,
      List<String> goOn) {
    static Now of(MeetNow now, @Nullable KeptAttempt kept, @Nullable KeptAttempt back) {
      Meet meet = now.meet();
      return new Now(
          Head.of(now.sheet()),
          kept == null ? null : One.of(kept),
          back == null ? null : One.of(back),
          now.placings().stream().map(p -> Place.of(now, p)).toList(),
          now.round(),
          now.order(),
          now.next(),
          meet != null && meet.hasCut(),
          meet == null ? List.of() : meet.goesOn());
    }
  }

  /** One attempt. */
  record One(
      long id,
      String athlete,
      int round,
      String result,
      @Nullable Double distance_m,
      @Nullable Double wind_mps,
      @Nullable Boolean windLegal,
      @Nullable Double gap_m,
      double startShift_m,
      String note) {
    static One of(KeptAttempt kept) {
      Attempt a = kept.attempt();
      Double wind = a.wind();
      return new One(
          kept.id(),
          a.athlete(),
          a.round(),
          a.result().mark(),
          Json.lengthOrNull(a.distance_m()),
          wind == null ? null : (Double) Wind.rounded(wind),
          wind == null ? null : (Boolean) Wind.legal(wind),
          Json.lengthOrNull(a.gap_m()),
          Json.length(a.startShift_m()),
          kept.note());
    }
  }

  /** Where somebody stands, with their attempts. */
  record Place(
      @Nullable Integer rank,
      String athlete,
      @Nullable Double best_m,
      @Nullable Double bestWindLegal_m,
      List<Double> marks_m,
      @Nullable Integer points,
      @Nullable String windSaid,
      List<One> attempts) {
    static Place of(MeetNow now, Placing p) {
      return new Place(
          p.rank(),
          p.athlete(),
          Json.lengthOrNull(p.best_m()),
          Json.lengthOrNull(p.bestLegal_m()),
          p.marks_m().stream().map(Json::length).toList(),
          now.points(p),
          now.windWords(p),
          now.sheet().attempts().stream().filter(a -> a.attempt().athlete().equals(p.athlete())).map(One::of).toList());
    }
  }

  /** What the next attempt is for. */
  record Aim(
      String athlete,
      int attemptsLeft,
      @Nullable Double best_m,
      String purpose,
      @Nullable Double aim_m,
      @Nullable Double foulChance,
      @Nullable Double startShift_m,
      @Nullable Double move_m,
      @Nullable Double needed_m,
      List<Meaning> rivals,
      String said,
      String from,
      @Nullable String cannotTell) {
    static Aim of(MeetAim a) {
      boolean told = a.advice() != null;
      return new Aim(
          a.athlete(),
          a.attemptsLeft(),
          Json.lengthOrNull(a.best_m()),
          a.purpose(),
          a.advice() == null ? null : (Double) Json.aim(a.advice().aim_m()),
          a.advice() == null ? null : (Double) Json.chance(a.advice().foulChance()),
          Json.lengthOrNull(a.startShift_m()),
          Json.lengthOrNull(a.move_m()),
          Json.lengthOrNull(a.needed_m()),
          a.rivals().stream().map(Meaning::of).toList(),
          a.words(LengthUnit.METRES),
          a.answer().from(),
          told ? null : a.why());
    }
  }

  /** What a rival's mark means. */
  record Meaning(String rival, @Nullable Double best_m, @Nullable Double needed_m, @Nullable Double aim_m, @Nullable Double chanceAhead, boolean worthwhile) {
    static Meaning of(RivalMeaning m) {
      boolean worth = m.next() != null && m.next().worthwhile();
      return new Meaning(
          m.rival().name(),
          Json.lengthOrNull(m.rival().best_m()),
          Json.lengthOrNull(m.needed_m()),
          m.next() == null || !worth ? null : (Double) Json.aim(m.next().aim_m()),
          m.next() == null ? null : (Double) Json.chance(m.next().worth()),
          worth);
    }
  }
}
