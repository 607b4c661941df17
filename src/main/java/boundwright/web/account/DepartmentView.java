package boundwright.web.account;

import boundwright.web.department.Department;
import boundwright.web.door.Reach;
import io.javalin.http.Context;
import java.util.Locale;

/**
 * What a page says of the department's login.
 *
 * @param name of the department; empty for none
 * @param here whether this page stands at the address to which the department sends people back
 * @param address that one
 * @param trouble why nobody can log in there; empty for nothing
 * @param only whether nobody comes in by a password or a passkey
 */
public record DepartmentView(String name, boolean here, String address, String trouble, boolean only) {
  static DepartmentView of(Context ctx, Department department, Reach reach) {
    return new DepartmentView(department.name(), isHere(ctx, reach), reach.outside(), department.trouble(), department.only());
  }

  /** Cookies are given to one address: who sets out from another would come back unknown. */
  static boolean isHere(Context ctx, Reach reach) {
    return PasskeyHandler.place(ctx, reach).origin().equals(reach.outside().toLowerCase(Locale.ROOT));
  }

  /** Whether there is a department whose login can be used from this page. */
  public boolean offered() {
    return !name.isEmpty() && here;
  }
}
