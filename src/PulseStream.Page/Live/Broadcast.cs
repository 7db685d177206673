namespace PulseStream.Page.Live;

/// <summary>Tells every viewer what one pipeline found. A viewer who cannot keep up is dropped, never waited for.</summary>
internal sealed class Broadcast
{
    private readonly Lock _gate = new();
    private readonly PresentState _present = new();
    private readonly List<Viewer> _viewers = [];
    private bool _isOver;

    /// <summary>How many are being told.</summary>
    public int ViewerCount
    {
        get
        {
            lock (_gate)
            {
                return _viewers.Count;
            }
        }
    }

    /// <summary>Tells everybody.</summary>
    public void Tell(PageEvent told)
    {
        lock (_gate)
        {
            _present.Take(told);
            _viewers.RemoveAll(viewer => !viewer.TryTell(told));
        }
    }

    /// <summary>A new viewer, who gets a greeting and the present state first and misses nothing after it.</summary>
    public Viewer Join(PageEvent hello)
    {
        lock (_gate)
        {
            var viewer = new Viewer([hello, .. _present.Events()]);
            if (_isOver)
            {
                viewer.End();
            }
            else
            {
                _viewers.Add(viewer);
            }

            return viewer;
        }
    }

    /// <summary>The page was closed.</summary>
    public void Leave(Viewer viewer)
    {
        lock (_gate)
        {
            _viewers.Remove(viewer);
        }

        viewer.Dispose();
    }

    /// <summary>The program ends: every stream is closed after what is queued.</summary>
    public void End()
    {
        lock (_gate)
        {
            _isOver = true;
            _viewers.ForEach(viewer => viewer.End());
            _viewers.Clear();
        }
    }
}
