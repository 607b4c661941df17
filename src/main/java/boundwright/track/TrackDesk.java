package boundwright.track;

import boundwright.athlete.Athlete;
import boundwright.flight.Logbook;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.MarkMove;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Logs reps and takes them back; each is on disk, and learned, before it answers. Safe to use from many threads. */
public final class TrackDesk {
  private final Logbook logbook;
  private final RepStore reps;
  private final MarkAdvisor advisor;
  private final TapLedger taps;
  private final Clock clock;
  private final OddTape tape = new OddTape();

  /** Works on these; {@code clock} tells which day it is. */
  public TrackDesk(Logbook logbook, RepStore reps, MarkAdvisor advisor, TapLedger taps, Clock clock) {
    this.logbook = logbook;
    this.reps = reps;
    this.advisor = advisor;
    this.taps = taps;
    this.clock = clock;
  }

  /**
   * Logs one rep.
   *
   * @param athlete whose rep it is
   * @param settings of the coach; they say which mark was advised and in which unit a question is asked
   * @throws RefusedException with a question if the tape of a rep of today lies far from the mark; asked once for the same tape
   */
  public Logged log(Athlete athlete, Tap tap, CoachSettings settings) {
    Rep rep = tap.rep();
    Advised before = advise(athlete, rep, settings);
    if (before.advice != null && !tap.sure() && rep.date().equals(LocalDate.now(clock))) {
      tape.check(athlete, rep, before.advice, settings.unit());
    }
    Kept kept = keep(tap);
    return kept.again
        ? new Logged(kept.rep, true, repsOfDay(kept.rep), null, before.advice, before.why)
        : told(athlete, kept.rep, before, settings);
  }

  /**
   * Does what a phone brings back, in its order and in one transaction, each for itself: one that cannot be does not hold up the others,
   * and one that was done before is not done twice. Each athlete is learned once, at the end; one with many reps of whom late ones come,
   * after the answer. A tape is not asked about, since nobody
   * stands at the runway any more.
   *
   * @return one answer for each deed, in order
   */
  public List<Brought> bring(List<Deed> deeds) {
    List<Brought> brought = logbook.late(changes -> new PhoneDeeds(changes, taps, clock).keep(deeds));
    logbook.learnForgotten();
    return brought;
  }

  /**
   * What became of a deed that a phone brought.
   *
   * @param token its identity
   * @param athletes whose log it changed or had changed
   * @param again whether it was done already
   * @param refused why it was not done, or null
   */
  public record Brought(String token, Set<Long> athletes, boolean again, @Nullable String refused) {}

  /** Tokens of what was tapped of an athlete since a day and is no rep now: reps taken back, and the taking back, handing and looking. */
  public List<String> goneTokens(long athleteId, LocalDate since) {
    return taps.gone(athleteId, since);
  }

  /** The token with which a rep was tapped, or null where it came without one. */
  public @Nullable String token(long repId) {
    return taps.ofRep(repId).map(KeptTap::token).orElse(null);
  }

  /** Logs the rows of a file, all or none, as they are written; the answers are in the order given. */
  public List<Rep> take(List<Rep> rows) {
    return logbook.logAll(rows);
  }

  /**
   * Takes a rep back as if it had never been logged.
   *
   * @throws RefusedException if the athlete has no rep with this number
   */
  public Logged undo(Athlete athlete, long repId, CoachSettings settings) {
    Rep rep = logbook.rep(athlete.id(), repId);
    Advised before = advise(athlete, rep, settings);
    logbook.undo(athlete.id(), repId);
    return told(athlete, rep, before, settings);
  }

  private record Kept(Rep rep, boolean again) {}

  private Kept keep(Tap tap) {
    String token = tap.token();
    if (token == null) {
      return new Kept(logbook.log(tap.rep()), false);
    }
    return reps.write(
        w -> {
          Optional<KeptTap> there = taps.of(token);
          if (there.isPresent()) {
            Long id = there.get().repId();
            return new Kept(id == null ? tap.rep() : w.find(id).orElse(tap.rep().withId(id)), true);
          }
          Rep kept = logbook.log(tap.rep());
          taps.keep(new KeptTap(token, KeptTap.Kind.REP, kept.athleteId(), kept.id(), null, null, clock.instant(), null));
          return new Kept(kept, false);
        });
  }

  private Logged told(Athlete athlete, Rep rep, Advised before, CoachSettings settings) {
    Advised after = advise(athlete, rep, settings);
    MarkMove move =
        before.advice == null || after.advice == null
            ? null
            : new MarkMove(before.advice.markToSand_m(), after.advice.markToSand_m());
    return new Logged(rep, false, repsOfDay(rep), move, after.advice, after.why);
  }

  /** How many reps the athlete has on the day of this one. */
  public int repsOfDay(Rep rep) {
    return (int) reps.since(rep.athleteId(), rep.date()).stream().filter(r -> r.date().equals(rep.date())).count();
  }

  /** The mark for the drill of a rep, or why there is none: that never keeps a rep from being logged. */
  private record Advised(@Nullable MarkAdvice advice, @Nullable String why) {}

  private Advised advise(Athlete athlete, Rep rep, CoachSettings settings) {
    try {
      return new Advised(advisor.advise(athlete, rep.sequence(), rep.approachSteps(), rep.surface(), settings), null);
    } catch (RefusedException e) {
      return new Advised(null, String.valueOf(e.getMessage()));
    }
  }
}
