package boundwright.store.engine;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicBoolean;

/** A connection that is lent: closing it, once, does what its lender says. */
final class LentConnection {
  private LentConnection() {}

  interface Closing {
    void close() throws SQLException;
  }

  static Connection of(Connection connection, Closing closing) {
    AtomicBoolean closed = new AtomicBoolean();
    InvocationHandler handler =
        (proxy, method, arguments) -> {
          if (method.getName().equals("close")) {
            if (closed.compareAndSet(false, true)) {
              closing.close();
            }
            return null;
          }
          try {
            return method.invoke(connection, arguments);
          } catch (InvocationTargetException e) {
            throw e.getCause() == null ? e : e.getCause();
          }
        };
    return (Connection) Proxy.newProxyInstance(LentConnection.class.getClassLoader(), new Class<?>[] {Connection.class}, handler);
  }
}
