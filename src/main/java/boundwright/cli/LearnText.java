package boundwright.cli;

import boundwright.clip.desk.Lessons;
import boundwright.clip.learn.Comparison;
import boundwright.clip.learn.Figures;
import boundwright.clip.learn.Taught;
import boundwright.quantity.Notes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was learned, in lines. */
final class LearnText {
  private LearnText() {}

  static List<String> lines(Lessons.Outcome o) {
    Taught t = o.taught();
    Comparison c = t.comparison();
    List<String> out = new ArrayList<>();
    out.add(
        Notes.counted(t.clips().size(), "clip") + ", " + t.putRight() + " put right by hand. Each was read by weights that had not seen "
            + (c.whole() ? "its athlete." : "it."));
    if (o.leftOut() > 0) {
      out.add(Notes.counted(o.leftOut(), "clip") + " left out: nobody recorded that the athlete may be filmed.");
    }
    if (o.damaged() > 0) {
      out.add(Notes.counted(o.damaged(), "clip") + " left out: the agreed contacts are damaged (boundwright clip labels).");
    }
    out.add(String.format(Locale.ROOT, "%-26s %5s %5s %9s %10s %6s %5s %10s", "", "known", "right", "too far", "wrong foot", "missed", "extra", "frames off"));
    out.add(row("set aside, before", c.before()));
    out.add(row("set aside, after", c.after()));
    out.add(row("made-up clips, before", c.madeUpBefore()));
    out.add(row("made-up clips, after", c.madeUpAfter()));
    out.add(c.said());
    return out;
  }

  private static String row(String name, Figures f) {
    return String.format(
        Locale.ROOT, "%-26s %5d %5d %9d %10d %6d %5d %10s", name, f.known(), f.right(), f.off(), f.wrongFoot(), f.missed(), f.extra(),
        Double.isNaN(f.framesOff()) ? "-" : String.format(Locale.ROOT, "%.2f", f.framesOff()));
  }

  static String inUse(Lessons lessons) {
    return lessons.inUse()
        .map(
            t -> {
              int gone = lessons.gone(t);
              return "Clips are read as taught here on " + t.day() + " (" + Notes.counted(t.clips().size(), "clip") + ")."
                  + (gone == 0 ? "" : " " + gone + " of them removed or changed since: learn again, or boundwright clip learn --forget");
            })
        .orElse("Clips are read with what came with the program.");
  }
}
