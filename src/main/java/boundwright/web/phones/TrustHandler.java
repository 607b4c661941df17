package boundwright.web.phones;

import boundwright.web.certificate.OwnCertificate;
import boundwright.web.door.Caller;
import boundwright.web.door.Reach;
import boundwright.web.door.Reached;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Shows a phone how it learns to trust this laptop's certificate. */
public final class TrustHandler {
  private final Pages pages;
  private final Gate gate;
  private final Reach reach;
  private final @Nullable OwnCertificate certificate;

  /** @param certificate null without https */
  public TrustHandler(Pages pages, Gate gate, Reach reach, @Nullable OwnCertificate certificate) {
    this.pages = pages;
    this.gate = gate;
    this.reach = reach;
    this.certificate = certificate;
  }

  /**
   * The page.
   *
   * @param fingerprint of the authority, to compare
   * @param until its last day
   * @param only the names and addresses that it can vouch for
   * @param go where the phone goes then
   * @param laptop whether this is the laptop's own screen, whose figures are the ones to believe
   */
  public record TrustView(String fingerprint, String until, List<String> only, String go, boolean laptop) {}

  /** The steps. */
  public void show(Context ctx) {
    OwnCertificate own = own();
    Caller caller = gate.caller(ctx);
    List<String> only = new java.util.ArrayList<>(reach.names());
    only.addAll(reach.addresses());
    pages.show(
        ctx, 200, "phones/trust", "Trust this laptop", "",
        new TrustView(own.fingerprint(), own.until(), only, reach.urls().isEmpty() ? "" : reach.urls().get(0), caller.reached() == Reached.LOOPBACK));
  }

  /** The certificate as a file that phones know what to do with. */
  public void file(Context ctx) {
    byte[] bytes = own().authority();
    ctx.header("Content-Disposition", "attachment; filename=\"boundwright.crt\"");
    ctx.contentType("application/x-x509-ca-cert");
    ctx.result(bytes);
  }

  private OwnCertificate own() {
    OwnCertificate own = certificate;
    if (own == null) {
      throw new Turned(404, "There is no certificate to trust: boundwright was opened without --https.");
    }
    return own;
  }
}
