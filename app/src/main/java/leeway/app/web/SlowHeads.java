package leeway.app.web;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.internal.HttpConnection;
import org.eclipse.jetty.util.component.AbstractLifeCycle;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * Cuts off who sends the head of a request byte by byte. The limit of silence does not see them, for they are never silent,
 * and the least rate holds for bodies only. Looked at now and then, so that it may take up to half as long again.
 */
final class SlowHeads extends AbstractLifeCycle implements Connection.Listener {
    private final Server server;
    private final long mostMs;
    private final Map<HttpConnection, Head> open = new ConcurrentHashMap<>();
    private volatile Scheduler.Task next;

    /** @param mostMs longest time from the first byte of a head to its last */
    SlowHeads(Server server, long mostMs) {
        this.server = server;
        this.mostMs = mostMs;
    }

    /** What was seen of a connection: requests and bytes until its last moment without a head under way. */
    private record Head(long requests, long bytes, long sinceNs) { }

    @Override protected void doStart() {
        for (Connector connector : server.getConnectors()) connector.addEventListener(this);
        look();
    }

    @Override protected void doStop() {
        Scheduler.Task task = next;
        if (task != null) task.cancel();
        open.clear();
    }

    @Override public void onOpened(Connection connection) {
        if (connection instanceof HttpConnection http) open.put(http, new Head(0, 0, System.nanoTime()));
    }

    @Override public void onClosed(Connection connection) {
        if (connection instanceof HttpConnection http) open.remove(http);
    }

    private void look() {
        long now = System.nanoTime();
        open.forEach((connection, before) -> look(connection, before, now));
        if (isStarting() || isStarted()) next = server.getScheduler().schedule(this::look, Math.max(1, mostMs / 4), TimeUnit.MILLISECONDS);
    }

    private void look(HttpConnection connection, Head before, long now) {
        long requests = connection.getMessagesIn();
        long bytes = connection.getBytesIn();
        boolean underWay = connection.getParser().inHeaderState() && requests == before.requests() && bytes != before.bytes();
        if (!underWay) open.replace(connection, before, new Head(requests, bytes, now));
        else if (now - before.sinceNs() > TimeUnit.MILLISECONDS.toNanos(mostMs)) connection.getEndPoint().close();
    }
}
