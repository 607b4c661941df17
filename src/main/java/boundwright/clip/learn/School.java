package boundwright.clip.learn;

import boundwright.clip.propose.ContactNet;
import boundwright.clip.propose.Proposer;
import boundwright.clip.reading.Setup;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Learns from labelled clips and says whether it helped. The clips are shared out into {@value #FOLDS} parts by their numbers alone, whole
 * athletes together where there are at least {@value #ATHLETES}; each part is read with weights that learned from the other parts. The
 * weights that are answered learned from all parts in the same way. Nothing is drawn but by the seed.
 */
public final class School {
  /** So many clips are needed; with fewer there is nothing to set aside (judgement). */
  public static final int LEAST_CLIPS = 8;
  /** So many of them must have been put right: from what was only accepted nothing new is learned (judgement). */
  public static final int LEAST_PUT_RIGHT = 4;
  /** From so many athletes on whole athletes are set aside (judgement). */
  static final int ATHLETES = 4;
  static final int FOLDS = 4;
  /** Every so many of those learned from are kept to know when to stop. */
  private static final int STOP_EVERY = 5;
  private static final int STEPS = 150;

  private final ContactNet from;
  private final long seed;
  private final Trainer trainer;
  private final Progress progress;

  /**
   * A clip to learn from.
   *
   * @param clip its number
   * @param athlete whose
   * @param setup its marks
   */
  public record Pupil(long clip, long athlete, Label label, Setup setup) {}

  /**
   * What came out.
   *
   * @param net the new weights
   * @param comparison whether they are better
   */
  public record Report(ContactNet net, Comparison comparison) {}

  /** Told how far it came. */
  public interface Progress {
    /**
     * A part of the work.
     *
     * @param what in words
     * @param share of all, 0 to 1
     */
    void at(String what, double share);
  }

  private School(ContactNet from, long seed, int steps, Progress progress) {
    this.from = from;
    this.seed = seed;
    trainer = new Trainer(from, steps);
    this.progress = progress;
  }

  /**
   * Learns from the weights that came with the program on.
   *
   * @throws RefusedException if there are too few clips
   * @throws InterruptedException if the thread was interrupted; nothing was changed then
   */
  public static Report learn(List<Pupil> pupils, long seed, Progress progress) throws InterruptedException {
    return learn(ContactNet.shipped(), pupils, seed, STEPS, progress);
  }

  static Report learn(ContactNet from, List<Pupil> pupils, long seed, int steps, Progress progress) throws InterruptedException {
    long putRight = pupils.stream().filter(p -> p.label.putRight()).count();
    if (pupils.size() < LEAST_CLIPS || putRight < LEAST_PUT_RIGHT) {
      throw new RefusedException(
          "Too few clips to learn from: " + pupils.size() + " whose contacts were agreed, " + putRight + " of them put right by hand. At least "
              + LEAST_CLIPS + " and " + LEAST_PUT_RIGHT + " are needed. Look at clips, put their contacts right, and say that all are right.");
    }
    return new School(from, seed, steps, progress).learn(pupils);
  }

  /** Whether whole athletes are set aside. */
  static boolean whole(List<Pupil> pupils) {
    return pupils.stream().map(Pupil::athlete).distinct().count() >= ATHLETES;
  }

  /** The groups in the order in which they are shared out, by their numbers alone. */
  static List<List<Pupil>> groups(List<Pupil> pupils) {
    boolean whole = whole(pupils);
    Map<Long, List<Pupil>> by = new LinkedHashMap<>();
    for (Pupil p : pupils.stream().sorted(Comparator.comparingLong(Pupil::clip)).toList()) {
      by.computeIfAbsent(whole ? p.athlete : p.clip, k -> new ArrayList<>()).add(p);
    }
    return by.entrySet().stream().sorted(Comparator.comparingLong(e -> mixed(e.getKey()))).map(Map.Entry::getValue).toList();
  }

  /** A number that tells nothing of the order in which clips came (the finaliser of SplitMix64; memory). */
  private static long mixed(long id) {
    long z = id + 0x9e3779b97f4a7c15L;
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return z ^ (z >>> 31);
  }

  private Report learn(List<Pupil> pupils) throws InterruptedException {
    List<List<Pupil>> groups = groups(pupils);
    Proposer old = new Proposer(from, "");
    List<Comparison.Group> compared = new ArrayList<>();
    for (int fold = 0; fold < FOLDS; fold++) {
      List<List<Pupil>> teach = new ArrayList<>();
      List<List<Pupil>> aside = new ArrayList<>();
      for (int g = 0; g < groups.size(); g++) {
        (g % FOLDS == fold ? aside : teach).add(groups.get(g));
      }
      Proposer taught = new Proposer(train(teach, fold), "");
      for (List<Pupil> group : aside) {
        compared.add(new Comparison.Group(read(group, old), read(group, taught)));
      }
    }
    ContactNet net = train(groups, FOLDS);
    Figures before = Figures.NONE;
    Figures after = Figures.NONE;
    Proposer taught = new Proposer(net, "");
    List<MadeUp> checks = MadeUp.checks();
    for (int i = 0; i < checks.size(); i++) {
      look();
      progress.at("reading made-up clips", 1 - 0.05 * (checks.size() - i) / checks.size());
      before = before.and(Score.of(checks.get(i).label(), Setup.none(), old));
      after = after.and(Score.of(checks.get(i).label(), Setup.none(), taught));
    }
    progress.at("done", 1);
    return new Report(net, Comparison.of(pupils.size(), whole(pupils), compared, before, after, seed));
  }

  private ContactNet train(List<List<Pupil>> groups, int turn) throws InterruptedException {
    List<Label> teach = new ArrayList<>();
    List<Label> stop = new ArrayList<>();
    for (int g = 0; g < groups.size(); g++) {
      List<Label> to = g % STOP_EVERY == STOP_EVERY - 1 || (groups.size() < STOP_EVERY && g == groups.size() - 1) ? stop : teach;
      groups.get(g).forEach(p -> to.add(p.label));
    }
    String what = turn < FOLDS ? "learning without part " + (turn + 1) + " of " + FOLDS : "learning from all";
    return trainer.train(seed + turn, teach, stop, s -> progress.at(what, 0.95 * (turn + s) / (FOLDS + 1)));
  }

  private static Figures read(List<Pupil> group, Proposer net) throws InterruptedException {
    Figures out = Figures.NONE;
    for (Pupil p : group) {
      look();
      out = out.and(Score.of(p.label, p.setup, net));
    }
    return out;
  }

  private static void look() throws InterruptedException {
    if (Thread.interrupted()) {
      throw new InterruptedException();
    }
  }
}
