package boundwright.clip.desk;

import boundwright.clip.learn.Comparison;
import boundwright.clip.learn.Figures;
import boundwright.clip.learn.Label;
import boundwright.clip.learn.School;
import boundwright.clip.learn.School.Pupil;
import boundwright.clip.learn.Taught;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.LongPredicate;
import org.jspecify.annotations.Nullable;

/**
 * What the clips that a coach agreed to can teach the contact network, on this machine and only when asked. Learning changes nothing by
 * itself: the coach takes the new weights, or not.
 */
public final class Lessons {
  private final ClipRepository clips;
  private final ClipLabels labels;
  private final TaughtFiles taught;
  private final Clock clock;

  Lessons(ClipRepository clips, ClipLabels labels, TaughtFiles taught, Clock clock) {
    this.clips = clips;
    this.labels = labels;
    this.taught = taught;
    this.clock = clock;
  }

  /**
   * A clip that a coach agreed to.
   *
   * @param label null where its file is damaged
   * @param trouble what is wrong with the file, or empty
   */
  public record Line(ClipRecord clip, @Nullable Label label, String trouble) {}

  /** All of them, oldest first. */
  public List<Line> all() {
    List<Line> out = new ArrayList<>();
    for (ClipRecord c : clips.all()) {
      try {
        labels.of(c.id()).ifPresent(l -> out.add(0, new Line(c, l, "")));
      } catch (RefusedException e) {
        out.add(0, new Line(c, null, String.valueOf(e.getMessage())));
      }
    }
    return List.copyOf(out);
  }

  /** How many of these clips were put right by hand and agreed to. */
  public int putRight(List<ClipRecord> of) {
    return (int) of.stream().filter(c -> labels.putRight(c.id())).count();
  }

  /** What is kept of an athlete: the files of the labels, by the clip's number. */
  public Map<Long, byte[]> of(long athleteId) {
    Map<Long, byte[]> out = new TreeMap<>();
    for (ClipRecord c : clips.of(athleteId)) {
      labels.bytes(c.id()).ifPresent(b -> out.put(c.id(), b));
    }
    return out;
  }

  /**
   * What came out of learning.
   *
   * @param taught the new weights, kept as a candidate
   * @param leftOut clips of athletes of whom no yes to being filmed is recorded
   * @param damaged clips whose label cannot be read
   */
  public record Outcome(Taught taught, int leftOut, int damaged) {}

  /**
   * Learns, compares, and keeps the new weights as a candidate.
   *
   * @param seed of everything drawn
   * @param mayBeFilmed by the athlete's number; clips of others are left out
   * @throws RefusedException if there are too few clips
   * @throws InterruptedException if it was called off; nothing was changed then
   */
  public Outcome learn(long seed, LongPredicate mayBeFilmed, School.Progress progress) throws InterruptedException {
    List<Pupil> pupils = new ArrayList<>();
    int leftOut = 0;
    int damaged = 0;
    for (Line line : all()) {
      Label label = line.label();
      if (label == null) {
        damaged++;
      } else if (!mayBeFilmed.test(line.clip().athleteId())) {
        leftOut++;
      } else {
        pupils.add(new Pupil(line.clip().id(), line.clip().athleteId(), label, line.clip().setup()));
      }
    }
    School.Report report;
    try {
      report = School.learn(pupils, seed, progress);
    } catch (RefusedException e) {
      throw leftOut == 0
          ? e
          : new RefusedException(
              e.getMessage() + " Left out: " + Notes.counted(leftOut, "clip") + " of athletes of whom nobody recorded that they may be filmed.", e);
    }
    int putRight = (int) pupils.stream().filter(p -> p.label().putRight()).count();
    Taught out =
        new Taught(report.net(), LocalDate.now(clock), seed, pupils.stream().map(Pupil::clip).toList(), putRight, report.comparison());
    taught.propose(out);
    return new Outcome(out, leftOut, damaged);
  }

  /** The weights that were learned and not taken yet. */
  public Optional<Taught> candidate() {
    return taught.candidate();
  }

  /** The weights in use, or empty for those of the program. */
  public Optional<Taught> inUse() {
    return Optional.ofNullable(taught.taken());
  }

  /** How many of the clips that weights learned from are gone, or no longer agreed to. */
  public int gone(Taught weights) {
    return (int) weights.clips().stream().filter(id -> !labels.agreed(id)).count();
  }

  /**
   * Reads with the candidate from now on.
   *
   * @throws RefusedException if there is none, if it is worse, or if clips that it learned from are gone
   */
  public Taught take() {
    Taught candidate =
        taught.candidate().orElseThrow(() -> new RefusedException("Nothing was learned yet, so there is nothing to take. Learn first: boundwright clip learn"));
    Comparison c = candidate.comparison();
    if (c.verdict() == Comparison.Verdict.WORSE) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "These weights are not taken, because they read worse. Faults on %d clips set aside: %s; on made-up clips: %s. Put more clips right and learn again.",
              c.clips(), faults(c.before(), c.after()), faults(c.madeUpBefore(), c.madeUpAfter())));
    }
    int gone = gone(candidate);
    if (gone > 0) {
      throw new RefusedException(
          "These weights learned from " + Notes.counted(gone, "clip") + " removed or changed since. Learn again: boundwright clip learn");
    }
    taught.take(candidate);
    return candidate;
  }

  private static String faults(Figures before, Figures after) {
    return before.faults() + " before, " + after.faults() + " after, in " + before.known() + " touchdowns";
  }

  /**
   * Reads with the weights of the program again. Clips that were put right with the others keep them.
   *
   * @return whether there was anything to forget
   */
  public boolean forget() {
    return taught.forget(named());
  }

  private Set<String> named() {
    Set<String> out = new HashSet<>();
    clips.all().forEach(c -> out.add(labels.readBy(c)));
    return out;
  }
}
