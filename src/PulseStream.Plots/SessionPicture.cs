using PulseStream.Plots.Panels;
using PulseStream.Samples;
using SkiaSharp;

namespace PulseStream.Plots;

/// <summary>
/// One picture of an archived session: plethysmogram, SpO2 with its interval and accepted readings, pulse rate,
/// perfusion and condition over one time axis. The same session gives the same bytes on every machine of one architecture; no installed
/// font is used.
/// </summary>
public static class SessionPicture
{
    private const float Margin = 20;
    private const float HeadlineSize = 19;
    private const float DetailSize = 14;
    private const float PanelTitleSize = 13;
    private const float SmallSize = 11;
    private const float LineFactor = 1.35f;
    private const float AboveTitle = 14;
    private const float BelowTitle = 7;
    private const float TimeLabelPixels = 20;
    private const float TallestRow = 22;
    private const float StripShare = 0.36f;
    private const string SmallPrint = "PulseStream is no medical device and does not diagnose. Clinicians and the local emergency number come first.";
    private const string TimeLabel = "Time since the start (s)";

    // Heights of plethysmogram, SpO2, pulse rate and perfusion.
    private static readonly float[] Shares = [0.29f, 0.36f, 0.2f, 0.15f];

    /// <summary>Draws a session as PNG.</summary>
    /// <param name="sessionFolder">The session's folder, or a file in it.</param>
    /// <param name="png">Receives the picture; left open.</param>
    /// <param name="size">Size; <see cref="PictureSize.Default"/> where null.</param>
    /// <exception cref="BadInputException">It is no sealed session, or a file of it was changed.</exception>
    public static void Draw(string sessionFolder, Stream png, PictureSize? size = null)
    {
        var content = SessionContent.Read(sessionFolder);
        var (width, height) = size ?? PictureSize.Default;
        using var surface = SKSurface.Create(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        surface.Canvas.Clear(SKColors.White);
        using var lettering = new Lettering(surface.Canvas);
        var top = DrawTitle(lettering, content, width);
        DrawPanels(surface.Canvas, lettering, content, top, width, height);
        lettering.Write(lettering.Shortened(SmallPrint, width - (2 * Margin), SmallSize, isBold: false), Margin, height - (Margin / 2), SmallSize, isBold: false, Palette.Soft);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, quality: 100);
        data.SaveTo(png);
    }

    private static float DrawTitle(Lettering lettering, SessionContent content, int width)
    {
        var room = width - (2 * Margin);
        var baseline = Margin + HeadlineSize - 4;
        foreach (var line in lettering.Wrap(SessionTitle.Headline(content.Session), " · ", room, HeadlineSize, isBold: true))
        {
            lettering.Write(line, Margin, baseline, HeadlineSize, isBold: true, Palette.Ink);
            baseline += HeadlineSize * LineFactor;
        }

        foreach (var line in lettering.Wrap(SessionTitle.Details(content), " · ", room, DetailSize, isBold: false))
        {
            lettering.Write(line, Margin, baseline, DetailSize, isBold: false, Palette.Ink);
            baseline += DetailSize * LineFactor;
        }

        return baseline - DetailSize;
    }

    private static void DrawPanels(SKCanvas canvas, Lettering lettering, SessionContent content, float top, int width, int height)
    {
        const float titleHeight = AboveTitle + PanelTitleSize + BelowTitle;
        var bottom = height - Margin - SmallSize - TimeLabelPixels - Panel.TimesPixels;
        var room = bottom - top - ((Shares.Length + 1) * titleHeight);
        var reasons = ConditionPanel.ReasonsIn(content.Seconds);
        var rows = Math.Max(2, reasons.Count);
        var strip = rows * Math.Min(TallestRow, StripShare * room / rows);
        float[] heights = [.. Shares.Select(share => share * (room - strip)), strip];
        var areas = new PanelArea[heights.Length];
        for (var i = 0; i < areas.Length; i++)
        {
            areas[i] = new(0, width, top + titleHeight, heights[i], content.EndSeconds, HasTimes: i == areas.Length - 1);
            top += titleHeight + heights[i];
        }

        DrawPanel(canvas, lettering, areas[0], PlethysmogramPanel.TextOf(content, areas[0]), PlethysmogramPanel.Draw(content, areas[0]));
        DrawPanel(canvas, lettering, areas[1], SaturationPanel.TextOf(content), SaturationPanel.Draw(content, areas[1]));
        DrawPanel(canvas, lettering, areas[2], PulsePanel.Text, PulsePanel.Draw(content, areas[2]));
        DrawPanel(canvas, lettering, areas[3], PerfusionPanel.Text, PerfusionPanel.Draw(content, areas[3]));
        DrawPanel(canvas, lettering, areas[4], ConditionPanel.TextOf(reasons), ConditionPanel.Draw(content, reasons, areas[4]));
        var middle = Panel.LeftPixels + (areas[4].DataWidth / 2) - (lettering.WidthOf(TimeLabel, PanelTitleSize, isBold: true) / 2);
        lettering.Write(TimeLabel, middle, bottom + Panel.TimesPixels + PanelTitleSize, PanelTitleSize, isBold: true, Palette.Ink);
    }

    private static void DrawPanel(SKCanvas canvas, Lettering lettering, PanelArea area, PanelText text, Panel panel)
    {
        using (panel)
        {
            panel.Render(canvas);
        }

        var end = lettering.Write(text.Quantity, Panel.LeftPixels, area.Top - BelowTitle, PanelTitleSize, isBold: true, Palette.Ink) + PanelTitleSize;
        var key = lettering.Shortened(text.Key, area.Right - Panel.RightPixels - end, PanelTitleSize, isBold: false);
        lettering.Write(key, end, area.Top - BelowTitle, PanelTitleSize, isBold: false, Palette.Soft);
    }
}
