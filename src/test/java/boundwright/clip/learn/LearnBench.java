package boundwright.clip.learn;

import boundwright.clip.learn.School.Pupil;
import boundwright.clip.propose.ContactNet;
import boundwright.clip.propose.Proposer;
import boundwright.clip.reading.Setup;
import boundwright.clip.truth.Noise;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * What training further on labelled clips reaches, the whole way that {@code boundwright clip learn} goes: {@code bench/clip learn [CLIPS
 * [SEED [ROW]]]}. The clips are made up (another athlete than the training's), their labels the truth. Own output.
 */
final class LearnBench {
  private static final int ATHLETES = 5;

  private LearnBench() {}

  private static Figures read(List<Label> labels, ContactNet net) {
    Proposer p = new Proposer(net, "");
    return labels.stream().map(l -> Score.of(l, Setup.none(), p)).reduce(Figures.NONE, Figures::and);
  }

  /** Every weight moved by so much of its array's usual size. */
  static ContactNet damaged(double by, long seed) {
    Random random = new Random(seed);
    float[][] w = ContactNet.shipped().arrays();
    for (float[] a : w) {
      double size = Adam.length(new float[][] {a}) / Math.sqrt(a.length);
      for (int i = 0; i < a.length; i++) {
        a[i] += (float) (by * size * random.nextGaussian());
      }
    }
    return ContactNet.shipped().with(w);
  }

  private static String words(Figures f) {
    return String.format(
        Locale.ROOT, "%d / %d / %d / %d / %d | %.2f", f.right(), f.off(), f.wrongFoot(), f.missed(), f.extra(), f.framesOff());
  }

  private static void row(String name, ContactNet from, Noise noise, int clips, long seed) throws InterruptedException {
    List<Pupil> pupils = new ArrayList<>();
    List<Label> labels = Styles.labels(clips, seed, 30, noise);
    for (int i = 0; i < clips; i++) {
      pupils.add(new Pupil(i + 1, 1 + i % ATHLETES, labels.get(i), Setup.none()));
    }
    long began = System.nanoTime();
    School.Report r = School.learn(from, pupils, seed, 150, (what, share) -> {});
    Comparison c = r.comparison();
    List<Label> usual = Styles.labels(14, seed + 100_000, 60, Noise.USUAL);
    System.out.printf(Locale.ROOT, "| %s, set aside, before | %d | %s |%n", name, c.before().known(), words(c.before()));
    System.out.printf(Locale.ROOT, "| after | %d | %s |%n", c.after().known(), words(c.after()));
    System.out.printf(Locale.ROOT, "| made-up clips, before | %d | %s |%n", c.madeUpBefore().known(), words(c.madeUpBefore()));
    System.out.printf(Locale.ROOT, "| after | %d | %s |%n", c.madeUpAfter().known(), words(c.madeUpAfter()));
    Figures b = read(usual, from);
    System.out.printf(Locale.ROOT, "| usual finder, 60 fps, before | %d | %s |%n", b.known(), words(b));
    System.out.printf(Locale.ROOT, "| after | %d | %s |%n", b.known(), words(read(usual, r.net())));
    System.out.printf(Locale.ROOT, "%s %.0f s%n", c.said(), (System.nanoTime() - began) / 1e9);
  }

  public static void main(String[] args) throws InterruptedException {
    int clips = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 60_000;
    String only = args.length > 2 ? args[2] : "";
    System.out.println("| clips | touchdowns | right / too far / wrong foot / missed / extra | frames off |");
    System.out.println("| --- | --- | --- | --- |");
    if (only.isEmpty() || only.equals("one-leg")) {
      row("both feet often on one leg, 30 fps", ContactNet.shipped(), Styles.BOTH_ON_ONE_LEG, clips, seed);
    }
    if (only.isEmpty() || only.equals("damaged")) {
      row("damaged network, usual finder, 30 fps", damaged(0.35, 5), Noise.USUAL, clips, seed);
    }
    if (only.isEmpty() || only.equals("usual")) {
      row("shipped network, usual finder, 30 fps", ContactNet.shipped(), Noise.USUAL, clips, seed);
    }
  }
}
