package io.github.wattledger.season;

import io.github.wattledger.cancel.CancelledException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletionService;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.Future;

/**
 * Keeps a fixed number of pieces of work going on an executor, and takes their results one by one on the calling thread:
 * that thread alone uses the store, and no more than these pieces are in memory.
 */
final class WorkLoop {
    private final Executor executor;
    private final int inFlight;
    private final SeasonListener listener;

    /**
     * A loop.
     *
     * @param executor what the work is done on; not shut down
     * @param inFlight how many pieces of work are under way at most, at least 1
     * @param listener hears of each finished piece, and is asked before each new one whether to stop
     */
    WorkLoop(Executor executor, int inFlight, SeasonListener listener) {
        this.executor = executor;
        this.inFlight = inFlight;
        this.listener = listener;
    }

    /** Makes a piece of work from an item, on the calling thread. */
    @FunctionalInterface
    interface Preparation<I, T> {
        Callable<T> prepare(I item) throws SeasonStoreException;
    }

    /** Takes a result, on the calling thread. */
    @FunctionalInterface
    interface Sink<T> {
        void accept(T result) throws SeasonStoreException;
    }

    /**
     * Works through items; results come in the order in which they are done.
     *
     * @throws CancellationException when the listener or an interrupt of the calling thread cancelled it
     * @throws IllegalStateException when a piece of work failed
     */
    <I, T> void run(List<I> items, Preparation<I, T> preparation, Sink<T> sink) throws SeasonStoreException {
        run(items, 0, items.size(), preparation, sink);
    }

    /**
     * {@link #run(List, Preparation, Sink)} for items that are part of more.
     *
     * @param doneBefore how many pieces of the whole are done already
     * @param total how many pieces the whole has
     */
    <I, T> void run(List<I> items, int doneBefore, int total, Preparation<I, T> preparation, Sink<T> sink)
            throws SeasonStoreException {
        CompletionService<T> service = new ExecutorCompletionService<>(executor);
        List<Future<T>> submitted = new ArrayList<>();
        Iterator<I> remaining = items.iterator();
        int running = 0;
        int done = doneBefore;
        try {
            while (remaining.hasNext() || running > 0) {
                while (remaining.hasNext() && running < inFlight) {
                    requireGoingOn();
                    submitted.add(service.submit(preparation.prepare(remaining.next())));
                    running++;
                }
                Future<T> finished = service.take();
                running--;
                submitted.removeIf(Future::isDone);
                sink.accept(finished.get());
                listener.progressed(++done, total);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw cancelled();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof CancelledException) {
                throw cancelled();
            }
            throw new IllegalStateException("a piece of the season failed: " + e.getCause(), e.getCause());
        } finally {
            submitted.forEach(future -> future.cancel(true));
        }
    }

    private void requireGoingOn() {
        if (listener.isCancelled() || Thread.currentThread().isInterrupted()) {
            throw cancelled();
        }
    }

    private static CancellationException cancelled() {
        return new CancellationException("the season was cancelled; what was done is kept in the store");
    }
}
