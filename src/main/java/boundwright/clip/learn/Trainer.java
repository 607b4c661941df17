package boundwright.clip.learn;

import boundwright.clip.propose.ContactNet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * Trains the shipped network further. Each step sees one lesson of a coach's clip, varied, and two made-up clips that are rehearsed: there
 * the goal is what the shipped network says itself, so that it keeps what it knows. It ends when the clips kept for stopping get no
 * better, rehearsed ones counted in, and answers the weights that were best on them. The same clips and the same seed give the same weights.
 */
final class Trainer {
  /**
   * Rate of Adam, reached after the first steps and falling to 0 with the last, and the pull back to the shipped weights (own output, settled on clips
   * with both feet often on one leg; twice the rate and one rehearsed clip a step taught as much and forgot three times as much).
   */
  private static final double RATE = 2e-4;
  private static final int WARM = 20;
  private static final double PULL = 0.5;
  /** Looked at the clips kept for stopping every so many steps; so many looks without a better one end it. */
  private static final int LOOK_EVERY = 25;
  private static final int PATIENCE = 4;
  /** Made-up clips rehearsed in each step; each counts as much as the coach's. */
  private static final int REHEARSED = 2;
  /** Every so many of them are looked at beside the clips kept for stopping. */
  private static final int KEPT_EVERY = 16;

  private final ContactNet from;
  private final int steps;
  private final List<Lesson> rehearsed;

  /** Told how far it came; an interrupt of the thread ends it. */
  interface Progress {
    void at(double share);
  }

  /**
   * Trainings from the same beginning, each by itself.
   *
   * @param from where they begin and what they are pulled back to
   * @param steps at most
   */
  Trainer(ContactNet from, int steps) {
    this.from = from;
    this.steps = steps;
    rehearsed = rehearsed(from);
  }

  /**
   * The network after it learned.
   *
   * @param seed of everything that is drawn
   * @param teach to learn from
   * @param stop to know when to stop; apart from the others
   * @throws InterruptedException if the thread was interrupted; nothing is changed then
   */
  ContactNet train(long seed, List<Label> teach, List<Label> stop, Progress progress) throws InterruptedException {
    Random random = new Random(seed);
    List<Varied> clips = new ArrayList<>(teach.stream().map(Varied::new).toList());
    List<Lesson> held = new ArrayList<>();
    for (Label l : stop) {
      Lesson plain = new Varied(l).plain();
      held.add(plain);
      held.add(plain.renamed());
    }
    List<Lesson> kept = new ArrayList<>();
    for (int i = 0; i < rehearsed.size(); i += KEPT_EVERY) {
      kept.add(rehearsed.get(i));
    }
    float[][] weights = from.arrays();
    float[][] begin = from.arrays();
    Gradient net = new Gradient(weights);
    Adam adam = new Adam(weights, begin, PULL);
    float[][] best = from.arrays();
    double least = mean(net, held) + mean(net, kept);
    int worse = 0;
    for (int step = 1; step <= steps && worse < PATIENCE; step++) {
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
      float[][] gradient = Adam.like(weights);
      int turn = (step - 1) % clips.size();
      if (turn == 0) {
        // every clip comes up equally often
        Collections.shuffle(clips, random);
      }
      learn(net, clips.get(turn).next(random), gradient);
      for (int k = 0; k < REHEARSED; k++) {
        learn(net, rehearsed.get(random.nextInt(rehearsed.size())), gradient);
      }
      adam.step(gradient, RATE * Math.min(1, (double) step / WARM) * (1 + Math.cos(Math.PI * step / steps)) / 2);
      if (step % LOOK_EVERY == 0 || step == steps) {
        double now = mean(net, held) + mean(net, kept);
        worse = now < least ? 0 : worse + 1;
        if (now < least) {
          least = now;
          for (int k = 0; k < weights.length; k++) {
            best[k] = weights[k].clone();
          }
        }
      }
      progress.at((double) step / steps);
    }
    return from.with(best);
  }

  private static void learn(Gradient net, Lesson lesson, float[][] gradient) {
    float[][] odds = net.forward(lesson.features());
    float[][] slope = new float[odds.length][odds[0].length];
    Lesson.loss(odds, lesson.goal(), lesson.worth(), lesson.legs(), slope);
    net.backward(slope, gradient);
  }

  private static double mean(Gradient net, List<Lesson> lessons) {
    return lessons.stream().mapToDouble(l -> l.loss(net.forward(l.features()))).average().orElse(Double.NaN);
  }

  /** Made-up clips and the same renamed, with what the network says of them now as their goal. */
  private static List<Lesson> rehearsed(ContactNet from) {
    List<Lesson> out = new ArrayList<>();
    for (MadeUp m : MadeUp.rehearsed()) {
      for (Lesson l : List.of(m.lesson(), m.lesson().renamed())) {
        float[][] odds = from.pass(l.features());
        for (float[] row : odds) {
          for (int i = 0; i < row.length; i++) {
            row[i] = (float) (1 / (1 + Math.exp(-row[i])));
          }
        }
        out.add(new Lesson(l.samples(), odds, l.worth(), l.legs()));
      }
    }
    return out;
  }
}
