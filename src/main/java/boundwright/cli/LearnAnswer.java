package boundwright.cli;

import boundwright.clip.desk.Lessons;
import boundwright.clip.learn.Comparison;
import boundwright.clip.learn.Figures;
import boundwright.clip.learn.Label;
import boundwright.clip.learn.Taught;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What {@code clip learn --json} prints; field by field in {@code docs/formats-json.md}. */
record LearnAnswer(
    String learned, long seed, List<Long> clips, int putRight, int leftOut, int damaged, String verdict, boolean wholeAthletes,
    List<Double> fewerFaultsIn100, Read before, Read after, Read madeUpBefore, Read madeUpAfter) {

  /** Counts of touchdowns. */
  record Read(int known, int right, int tooFar, int wrongFoot, int missed, int extra, @Nullable Double framesOff) {}

  /** What {@code clip labels --json} prints. */
  record Labels(List<Labelled> clips, @Nullable String readAsTaughtOn, int learnedFromGone, @Nullable String learnedNotTaken) {}

  /** One clip; {@code touchdowns} is null where the file is damaged. */
  record Labelled(long clip, String date, @Nullable String agreed, @Nullable Integer touchdowns, boolean putRight) {}

  static LearnAnswer of(Lessons.Outcome o) {
    Taught t = o.taught();
    Comparison c = t.comparison();
    return new LearnAnswer(
        t.day().toString(), t.seed(), t.clips(), t.putRight(), o.leftOut(), o.damaged(), c.verdict().name().toLowerCase(Locale.ROOT), c.whole(),
        List.of(cut(c.gain_low()), cut(c.gain()), cut(c.gain_high())), read(c.before()), read(c.after()), read(c.madeUpBefore()), read(c.madeUpAfter()));
  }

  static Labels labels(List<Lessons.Line> all, Lessons lessons) {
    Taught t = lessons.inUse().orElse(null);
    return new Labels(
        all.stream().map(LearnAnswer::labelled).toList(), t == null ? null : t.day().toString(), t == null ? 0 : lessons.gone(t),
        lessons.candidate().map(c -> c.day().toString()).orElse(null));
  }

  private static Labelled labelled(Lessons.Line line) {
    Label l = line.label();
    return new Labelled(
        line.clip().id(), line.clip().date().toString(), l == null ? null : l.agreed().toString(), l == null ? null : (Integer) l.touchdowns(),
        l != null && l.putRight());
  }

  private static Read read(Figures f) {
    return new Read(
        f.known(), f.right(), f.off(), f.wrongFoot(), f.missed(), f.extra(), Double.isNaN(f.framesOff()) ? null : (Double) cut(f.framesOff()));
  }

  private static double cut(double v) {
    return Math.rint(v * 100) / 100;
  }
}
