package boundwright.web.door;

/** How a page was reached. A phone can open pages without a connection only over {@link #HTTPS}. */
public enum Reached {
  /** On the machine itself. */
  LOOPBACK,
  /** Over the network, open to whoever reads along. */
  HTTP,
  /** Over the network, sealed. */
  HTTPS
}
