package boundwright.web.squad;

import boundwright.store.Workbench;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The front page as it is worked out beside the start. Whoever asks for it meanwhile waits for it instead of working it out a second time. */
public final class FirstPage {
  /** It is a matter of a second; who has waited so long works it out as if there were none. */
  private static final int PATIENCE_S = 10;

  private static final Logger LOG = LoggerFactory.getLogger(FirstPage.class);

  private final SquadDesk desk;
  private final CountDownLatch done = new CountDownLatch(1);

  /** Of a store with its squad; nothing is worked out yet. */
  public FirstPage(Workbench bench) {
    desk = new SquadDesk(bench);
  }

  /** Works it out, its marks and its verdicts at the same time: the machine has a second core as soon as the server is up. */
  public void workOut() {
    try {
      Thread marks = new Thread(desk::marksAhead, "marks-ahead");
      marks.setDaemon(true);
      marks.setUncaughtExceptionHandler((t, trouble) -> LOG.debug("not made ready ahead; whoever asks first finds the trouble", trouble));
      marks.start();
      desk.daysAhead();
      marks.join();
      desk.of(new SquadView.Asked("", 0, "", false), "");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      done.countDown();
    }
  }

  /** What lays the page out, once it has what it needs. */
  SquadDesk desk() {
    try {
      done.await(PATIENCE_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return desk;
  }
}
