package boundwright.clip;

import boundwright.clip.body.DeLeva;
import boundwright.clip.body.Posture;
import boundwright.clip.contact.Contact;
import boundwright.clip.reading.TouchdownDistance;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.clip.truth.TrueContact;
import boundwright.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

/** Runs made-up clips through the pipeline and compares with the truth. Own output. */
final class ClipAccuracy {
  /** Differences of one kind. */
  static final class Errors {
    final List<Double> all = new ArrayList<>();
    int covered;
    int judged;

    int unknown;

    void add(double e) {
      if (Double.isNaN(e)) {
        unknown++;
      } else {
        all.add(e);
      }
    }

    void add(Estimate estimate, double truth) {
      add(estimate.p50() - truth);
      judged++;
      covered += truth >= estimate.p05() && truth <= estimate.p95() ? 1 : 0;
    }

    double rms() {
      return Math.sqrt(all.stream().mapToDouble(e -> e * e).average().orElse(Double.NaN));
    }

    double mean() {
      return all.stream().mapToDouble(e -> e).average().orElse(Double.NaN);
    }

    double worst() {
      return all.stream().mapToDouble(Math::abs).max().orElse(Double.NaN);
    }

    double cover() {
      return judged == 0 ? Double.NaN : 100.0 * covered / judged;
    }
  }

  int trueContacts;
  int rightFoot;
  int missed;
  int extra;
  /** Touchdowns and toe-offs that the reading left open, because the point was out of sight. */
  int open;
  int frames;
  int legFramesWrong;
  int legFramesWrongBefore;
  final Errors touchdown = new Errors();
  final Errors toeOff = new Errors();
  final Errors length = new Errors();
  final Errors ahead = new Errors();
  final Errors aheadByTime = new Errors();
  final Errors aheadByPlace = new Errors();
  final Errors aheadByBody = new Errors();
  final Errors lean = new Errors();
  final Errors landing = new Errors();

  void run(double fps, Noise noise, boolean irregular, int clips, long seed, Consumer<String> log) {
    for (int k = 0; k < clips; k++) {
      one(TrueClip.numbered(k, fps, noise, irregular, seed), "clip " + (seed + k), log);
    }
  }

  void one(TrueClip clip, String name, Consumer<String> log) {
    GroundMarks marks = GroundMarks.of(clip.marks());
    PlaneMap plane = marks.upright(clip.poleFoot(), clip.poleTop(), clip.pole_m());
    Coherent athlete = Coherent.of(clip.found(), plane);
    countSides(clip, athlete);
    List<Contact> found = athlete.finder().find();
    List<TrueContact> truth = clip.athlete().mass().contacts().stream().filter(c -> whole(clip, c)).toList();
    Posture posture = new Posture(athlete.motion(), DeLeva.MALE);
    TrueContact before = null;
    Contact foundBefore = null;
    for (TrueContact c : truth) {
      trueContacts++;
      Contact best = null;
      for (Contact f : found) {
        double mid = f.middle_s();
        if (mid > c.down() - 0.05 && mid < c.up() + 0.05 && !f.bothFeet()) {
          best = f;
        }
      }
      if (best == null) {
        missed++;
        log.accept(name + " missed " + c);
        before = null;
        continue;
      }
      if (best.foot() == c.foot()) {
        rightFoot++;
      } else {
        log.accept(name + " wrong foot " + c);
      }
      Estimate down = best.touchdown_s();
      Estimate up = best.toeOff_s();
      if (down != null) {
        touchdown.add(down, c.down());
        note(log, name + " td", touchdown, 0.02, c);
        Estimate distance = TouchdownDistance.of(best, posture);
        if (distance == null) {
          ahead.add(Double.NaN);
        } else {
          ahead.add(distance, c.touchdownDistance());
          double late = clip.athlete().centreOfMass(down.p50()).x() - c.xIn();
          aheadByTime.add(late);
          aheadByPlace.add(best.place_m().p50() - c.toeX());
          aheadByBody.add(posture.centreOfMass(c.down()).x() - c.xIn());
        }
        note(log, name + " ahead", ahead, 0.08, c);
        lean.add(posture.trunkLeanDeg(down.p50()) - clip.athlete().leanDeg(c.down()));
      } else {
        open++;
      }
      if (up != null) {
        toeOff.add(up, c.up());
        note(log, name + " to", toeOff, 0.02, c);
      } else {
        open++;
        log.accept(name + " no toe-off " + c);
      }
      if (before != null && foundBefore != null) {
        length.add(Contact.between(foundBefore.place_m(), best.place_m()), c.toeX() - before.toeX());
        note(log, name + " length", length, 0.1, c);
      }
      before = c;
      foundBefore = best;
    }
    for (Contact f : found) {
      boolean known =
          clip.athlete().mass().contacts().stream().anyMatch(c -> f.middle_s() > c.down() - 0.06 && f.middle_s() < c.up() + 0.06)
              || f.middle_s() > clip.athlete().mass().landingTime() - 0.06;
      if (!known) {
        extra++;
        log.accept(name + " extra " + f);
      }
      Estimate down = f.touchdown_s();
      if (f.bothFeet() && down != null) {
        landing.add(f.heel_m().p50() - clip.athlete().mass().landingX());
      }
    }
  }

  private static void note(Consumer<String> log, String what, Errors e, double limit, TrueContact c) {
    double last = e.all.isEmpty() ? 0 : e.all.get(e.all.size() - 1);
    if (Math.abs(last) > limit) {
      log.accept(String.format(Locale.ROOT, "%s off by %.4f at %.3f-%.3f %s strike %.1f", what, last, c.down(), c.up(), c.foot(), c.strikeDeg()));
    }
  }

  /** Whether both feet are in the picture from a little before touchdown to a little after toe-off. */
  private static boolean whole(TrueClip clip, TrueContact c) {
    double[] t = clip.truth().times();
    if (c.down() - 0.08 < t[0] || c.up() + 0.08 > t[t.length - 1]) {
      return false;
    }
    for (int i = 0; i < t.length; i++) {
      if (t[i] > c.down() - 0.08 && t[i] < c.up() + 0.08) {
        for (Joint j : List.of(Joint.ANKLE, Joint.HEEL, Joint.TOE)) {
          if (!clip.truth().seen(BodyPoint.of(j, c.foot()), i)) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private void countSides(TrueClip clip, Coherent athlete) {
    for (int i = 0; i < clip.truth().frames(); i++) {
      frames++;
      legFramesWrong += clip.exchanged(athlete.sides().track(), i) ? 1 : 0;
      legFramesWrongBefore += clip.exchanged(clip.found(), i) ? 1 : 0;
    }
  }

  String row(String name) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %.1f %% | %d / %d / %d | %.1f -> %.2f %% | %.1f (%+.1f, %.0f %%) | %.1f (%+.1f, %.0f %%) | %.1f (%.0f %%) | %.1f (%+.1f, %.0f %%) | %.1f / %.1f / %.1f | %.1f | %.1f |",
        name, trueContacts, 100.0 * rightFoot / Math.max(1, trueContacts), missed, extra,
        open + touchdown.unknown + toeOff.unknown + length.unknown + ahead.unknown, 100.0 * legFramesWrongBefore / frames,
        100.0 * legFramesWrong / frames, 1000 * touchdown.rms(), 1000 * touchdown.mean(), touchdown.cover(), 1000 * toeOff.rms(),
        1000 * toeOff.mean(), toeOff.cover(), 100 * length.rms(), length.cover(), 100 * ahead.rms(), 100 * ahead.mean(), ahead.cover(), 100 * aheadByTime.rms(),
        100 * aheadByPlace.rms(), 100 * aheadByBody.rms(), lean.rms(),
        100 * landing.rms());
  }

  static final String HEAD =
      "| clips | contacts | right foot | missed / extra / values left open | leg frames exchanged before -> after | touchdown RMS ms (bias, in 90 %) | toe-off RMS ms (bias, in 90 %) | length RMS cm (in 90 %) | touchdown distance RMS cm (bias, in 90 %) | of it by time / place / body | lean RMS deg | landing RMS cm |\n"
          + "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |";

  /** Arguments: clips, first seed, frame rates by commas (or -), and anything more to hear of every large error. */
  public static void main(String[] args) {
    int clips = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1000;
    List<String> rates = List.of((args.length > 2 && !args[2].equals("-") ? args[2] : "240,120,60,30").split(","));
    boolean talk = args.length > 3;
    Consumer<String> log = talk ? System.out::println : s -> {};
    System.out.println(HEAD);
    for (Noise noise : List.of(Noise.NONE, Noise.USUAL)) {
      for (String fps : rates) {
        ClipAccuracy a = new ClipAccuracy();
        a.run(Double.parseDouble(fps), noise, noise.equals(Noise.USUAL), clips, seed, log);
        System.out.println(a.row((noise.equals(Noise.USUAL) ? "usual noise, " : "no noise, ") + fps + " fps"));
      }
    }
    if (rates.contains("120")) {
      ClipAccuracy merged = new ClipAccuracy();
      merged.run(120, Noise.LIKE_PAINTED, true, clips, seed, log);
      System.out.println(merged.row("and both feet on one leg, 120 fps"));
    }
  }
}
