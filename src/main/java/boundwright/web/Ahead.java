package boundwright.web;

import boundwright.store.Workbench;
import boundwright.web.squad.FirstPage;
import io.javalin.Javalin;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What can be made ready beside the opening of the store and of the pages: half of the time from the start to the first page is the loading of
 * classes, and a machine has more than one core. Nothing depends on it.
 */
public final class Ahead {
  private static final Logger LOG = LoggerFactory.getLogger(Ahead.class);

  private Ahead() {}

  /** Begins to load the classes of the server, before the store is open. */
  public static void ofServer() {
    beside("server-ahead", () -> Javalin.create(config -> config.startup.showJavalinBanner = false));
  }

  /** Begins to work out the front page, once the store is open and has somebody in it. */
  public static FirstPage ofFirstPage(Workbench bench) {
    FirstPage page = new FirstPage(bench);
    beside("page-ahead", page::workOut);
    return page;
  }

  private static void beside(String name, Runnable work) {
    Thread thread =
        new Thread(
            () -> {
              try {
                work.run();
              } catch (RuntimeException | LinkageError e) {
                LOG.debug("not made ready ahead; whoever asks first finds the trouble", e);
              }
            },
            name);
    thread.setDaemon(true);
    thread.start();
  }
}
