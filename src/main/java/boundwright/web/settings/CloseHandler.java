package boundwright.web.settings;

import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.util.concurrent.CountDownLatch;

/** Closes the program from a page: whoever opened it with a click has no window in which to press Ctrl-C. */
public final class CloseHandler {
  private final Pages pages;
  private final CountDownLatch asked;

  /** @param asked counted down when a page asks for it */
  public CloseHandler(Pages pages, CountDownLatch asked) {
    this.pages = pages;
    this.asked = asked;
  }

  /** Says goodbye, and asks whoever waits to close. */
  public void close(Context ctx) {
    pages.message(ctx, 200, "boundwright closes", "All that was logged is kept. You can close this page. To open boundwright again, start the program.");
    asked.countDown();
  }
}
