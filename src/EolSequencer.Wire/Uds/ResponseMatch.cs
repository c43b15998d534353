using EolSequencer.Wire.Obd;

namespace EolSequencer.Wire.Uds;

/// <summary>Tells the answer of a request from everything else that arrives.</summary>
/// <remarks>
/// <para>
/// A positive response belongs to a request when it has its service and repeats what the service repeats: the
/// sub-function, the data or routine identifier, the control parameter, the trouble code, the block counter. So the
/// late answer of one read is never taken for the answer of the next read of something else. Emissions services (SAE
/// J1979) repeat the parameter or information type; a unit may leave out parameters that it does not support.
/// </para>
/// <para>
/// A refusal repeats the service only: a late one cannot be told from a fresh one of the same service by its bytes.
/// Whoever gives up on a request without having heard "response pending" lets P2* pass before the next request of the
/// same service, or accepts that risk. Source: ISO 14229-1, response message definitions of each service.
/// </para>
/// </remarks>
public static class ResponseMatch
{
    private const byte PositiveOffset = 0x40;
    private const int NegativeLength = 3;

    /// <summary>What a message is to a request.</summary>
    /// <param name="request">The request as it was sent, at least its service byte.</param>
    /// <param name="message">A message that arrived from where the answer is due.</param>
    public static Answer Of(ReadOnlySpan<byte> request, ReadOnlySpan<byte> message)
    {
        if (message.Length >= NegativeLength && message[0] == NegativeResponse.Mark && message[1] == request[0])
        {
            return Refusal((NegativeCode)message[2]);
        }

        return message.Length > 0 && message[0] == request[0] + PositiveOffset && Repeats(request, message)
            ? new Answer(AnswerKind.Positive)
            : default;
    }

    private static Answer Refusal(NegativeCode code) => new(
        code switch
        {
            NegativeCode.RequestCorrectlyReceivedResponsePending => AnswerKind.Pending,
            NegativeCode.BusyRepeatRequest => AnswerKind.Busy,
            _ => AnswerKind.Negative,
        },
        code);

    private static bool Repeats(ReadOnlySpan<byte> request, ReadOnlySpan<byte> message)
    {
        if (ObdMessage.IsService(request[0]))
        {
            return ObdMessage.Repeats(request, message);
        }

        var end = 1 + RepeatedBytes(request);
        if (message.Length < end || request.Length < end)
        {
            return false;
        }

        if (!SubFunction.IsPartOf((ServiceId)request[0]))
        {
            return request[1..end].SequenceEqual(message[1..end]);
        }

        return (request[1] & SubFunction.ValueBits) == message[1] && request[2..end].SequenceEqual(message[2..end]);
    }

    private static int RepeatedBytes(ReadOnlySpan<byte> request) => (ServiceId)request[0] switch
    {
        ServiceId.ReadDtcInformation => ReadDtcInformation.RepeatsCode(request) ? 4 : 1,
        ServiceId.ReadDataByIdentifier or ServiceId.WriteDataByIdentifier => 2,
        ServiceId.InputOutputControlByIdentifier or ServiceId.RoutineControl => 3,
        ServiceId.TransferData => 1,
        var service when SubFunction.IsPartOf(service) => 1,
        _ => 0,
    };
}
