package boundwright.flight.season;

/**
 * The program's mark and landing against two rules that coaches use, rep by rep as they are logged: mean of the last three
 * landings less 0.9 m, and less half the last flight; where a drill was not yet done at this rung, the last rung's mean
 * x 1.05. The rules see every landing and last flight, the program only what is logged.
 */
final class Rules {
  int reps;
  double modelSquares;
  double lastThreeSquares;
  double truthSquares;
  int modelCounted;
  int lessNinetyCounted;
  int lessHalfCounted;

  void add(double[] p, Marks program, double lastThree, double lastFlight, double truth) {
    int n = p.length - 1;
    reps++;
    modelSquares += Math.pow(p[n] - program.meanLanding(), 2);
    lastThreeSquares += Math.pow(p[n] - lastThree, 2);
    truthSquares += Math.pow(p[n] - truth, 2);
    modelCounted += Marks.counts(p, program.best()) ? 1 : 0;
    lessNinetyCounted += Marks.counts(p, lastThree - 0.9) ? 1 : 0;
    lessHalfCounted += Marks.counts(p, lastThree - lastFlight / 2) ? 1 : 0;
  }

  void add(Rules r) {
    reps += r.reps;
    modelSquares += r.modelSquares;
    lastThreeSquares += r.lastThreeSquares;
    truthSquares += r.truthSquares;
    modelCounted += r.modelCounted;
    lessNinetyCounted += r.lessNinetyCounted;
    lessHalfCounted += r.lessHalfCounted;
  }

  double rms() {
    return Math.sqrt(modelSquares / lastThreeSquares);
  }

  double rmsOfTruth() {
    return Math.sqrt(truthSquares / lastThreeSquares);
  }

  double success() {
    return modelCounted / (double) reps;
  }

  double bestRule() {
    return Math.max(lessNinetyCounted, lessHalfCounted) / (double) reps;
  }

  String line() {
    return reps == 0 ? "none" : String.format(
        java.util.Locale.ROOT,
        "RMS %.3f (truth %.3f)  counts: program %.3f, less 0.9 m %.3f, less half %.3f  n %d",
        rms(), rmsOfTruth(), success(), lessNinetyCounted / (double) reps, lessHalfCounted / (double) reps, reps);
  }
}
